using System.Buffers.Binary;
using System.Numerics;
using System.Text;
using System.Text.Json;
using CanopySim.Files.Moments;
using CanopySim.Geometry;
using Xunit;

namespace CanopySim.Files.Tests.Moments;

public sealed class LightFilesTest
{
    [Fact]
    public void AMomentHasItsKeys()
    {
        var band = new LightBand(300.5, 100, 250, 20, 80, 50.5);
        var moment = new LightMoment
        {
            TimeUtc = new DateTimeOffset(2024, 7, 1, 13, 30, 0, TimeSpan.FromHours(-7)),
            SunZenithDeg = 30.123456789,
            SunAzimuthDeg = 180,
            SunDirectionInCell = (0.1, -0.2, 0.97),
            CellAcrossM = 2.4,
            CellAlongM = 1.5,
            LeafAreaM2 = 5,
            SunlitLeafAreaM2 = 2,
            GroundSunlitFraction = 0.4,
            SkyGapFraction = 0.3,
            Par = band,
            Nir = band with { ReflectedWM2 = 99 },
        };
        using var json = JsonDocument.Parse(LightFiles.Json(moment));
        var root = json.RootElement;
        Assert.Equal(
            ["time_utc", "sun", "cell", "leaf_area_m2", "sunlit_leaf_area_m2", "ground_sunlit_fraction", "sky_gap_fraction", "bands"],
            root.EnumerateObject().Select(property => property.Name));
        Assert.Equal(["zenith_deg", "azimuth_deg", "direction_in_cell"], root.GetProperty("sun").EnumerateObject().Select(property => property.Name));
        Assert.Equal(["across_m", "along_m"], root.GetProperty("cell").EnumerateObject().Select(property => property.Name));
        foreach (var name in new[] { "par", "nir" })
        {
            Assert.Equal(
                ["incident_direct_w_m2", "incident_diffuse_w_m2", "absorbed_leaves_w_m2", "absorbed_wood_w_m2", "absorbed_ground_w_m2", "reflected_w_m2"],
                root.GetProperty("bands").GetProperty(name).EnumerateObject().Select(property => property.Name));
        }

        Assert.Equal(("2024-07-01T20:30:00Z", 30.123456789), (root.GetProperty("time_utc").GetString(), root.GetProperty("sun").GetProperty("zenith_deg").GetDouble()));
        Assert.Equal([0.1, -0.2, 0.97], root.GetProperty("sun").GetProperty("direction_in_cell").EnumerateArray().Select(value => value.GetDouble()));
        Assert.Equal(99, root.GetProperty("bands").GetProperty("nir").GetProperty("reflected_w_m2").GetDouble());
    }

    [Fact]
    public void TheFruitZoneHasItsKeysAndSharesOnlyInTheLight()
    {
        var zone = new FruitZoneMoment(1.1, 1600, 160, 80, 40, null);
        Assert.Equal(
            "height_m 1.1 par_above_umol_m2_s 1600 bar_up_par_umol_m2_s 160 bar_up_share_of_above 0.1 bar_right_par_umol_m2_s 80 "
            + "bar_right_share_of_above 0.05 bar_left_par_umol_m2_s 40 bar_left_share_of_above 0.025 clusters_par_umol_m2_s null clusters_share_of_above null",
            Written(zone));
        Assert.Contains("clusters_par_umol_m2_s 64 clusters_share_of_above 0.04", Written(zone with { ClustersUmolM2S = 64 }), StringComparison.Ordinal);
        Assert.Contains("bar_up_par_umol_m2_s 0 bar_up_share_of_above null", Written(new FruitZoneMoment(1.1, 0, 0, 0, 0, 0)), StringComparison.Ordinal);

        static string Written(FruitZoneMoment zone)
        {
            var moment = new LightMoment
            {
                TimeUtc = default,
                SunZenithDeg = 0,
                SunAzimuthDeg = 0,
                SunDirectionInCell = default,
                CellAcrossM = 1,
                CellAlongM = 1,
                LeafAreaM2 = 0,
                SunlitLeafAreaM2 = 0,
                GroundSunlitFraction = 0,
                SkyGapFraction = 0,
                Par = new LightBand(0, 0, 0, 0, 0, 0),
                Nir = new LightBand(0, 0, 0, 0, 0, 0),
                FruitZone = zone,
            };
            using var json = JsonDocument.Parse(LightFiles.Json(moment));
            return string.Join(' ', json.RootElement.GetProperty("fruit_zone").EnumerateObject().Select(property => $"{property.Name} {property.Value.GetRawText()}"));
        }
    }

    [Fact]
    public void LeavesOfAMomentHaveTheirColumns()
    {
        var path = Path.GetTempFileName();
        LightFiles.WriteLeaves(path, [new LeafLightRow(4, 0.0101, 0.5, 812.25, 90)]);
        Assert.Equal("leaf_id,area_m2,sunlit_fraction,absorbed_par_umol_m2_s,absorbed_nir_w_m2\n4,0.0101,0.5,812.25,90\n", File.ReadAllText(path));
        File.Delete(path);
    }

    // Read back by the layout of the PLY description: header, then vertices, then faces.
    [Fact]
    public void ASceneReadsBack()
    {
        var scene = new Scene
        {
            Cell = new Cell(2.4, 1.5, 0.1),
            Corners = [new(0, 0, 1), new(1, 0, 1), new(0, 1, 1), new(-0.5f, 2, 0.25f), new(0, 2, 0), new(0, 2, 1)],
            SurfaceOfTriangle = [0, 1],
            Kinds = [SurfaceKind.Blade, SurfaceKind.Wood],
            LeafIds = [41, -1],
        };
        using var stream = new MemoryStream();
        SceneFile.Write(stream, scene);
        var bytes = stream.ToArray();
        var text = Encoding.ASCII.GetString(bytes);
        var start = text.IndexOf("end_header\n", StringComparison.Ordinal) + "end_header\n".Length;
        Assert.StartsWith("ply\nformat binary_little_endian 1.0\ncomment ", text);
        Assert.Contains("\nelement vertex 6\nproperty float x\nproperty float y\nproperty float z\nelement face 2\nproperty list uchar int vertex_indices\nproperty int leaf_id\nend_header\n", text);
        Assert.Equal(start + (6 * 12) + (2 * 17), bytes.Length);
        var corners = Enumerable.Range(0, 6).Select(i => new Vector3(Single(start + (12 * i)), Single(start + (12 * i) + 4), Single(start + (12 * i) + 8)));
        Assert.Equal(scene.Corners, corners);
        for (var face = 0; face < 2; face++)
        {
            var at = start + 72 + (17 * face);
            Assert.Equal(3, bytes[at]);
            Assert.Equal([3 * face, (3 * face) + 1, (3 * face) + 2, scene.LeafIds[face]], Enumerable.Range(0, 4).Select(i => Int(at + 1 + (4 * i))));
        }

        float Single(int at) => BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(at));
        int Int(int at) => BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(at));
    }
}
