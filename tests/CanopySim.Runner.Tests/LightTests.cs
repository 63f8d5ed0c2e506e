using System.Numerics;
using System.Text.Json;
using CanopySim.Files.Moments;
using CanopySim.Geometry;
using Xunit;

namespace CanopySim.Runner.Tests;

public sealed class LightTests(LightRun run) : IClassFixture<LightRun>
{
    // Every leaf's cell carries six digits, the corners of the scene seven.
    private const double Digits = 1e-5;

    private static readonly string[] Bands = ["par", "nir"];

    private readonly JsonElement _light = JsonDocument.Parse(File.ReadAllBytes(run.File("light.json"))).RootElement;

    private readonly CsvRows _leaves = CsvRows.Read(run.File("leaves.csv"));

    [Fact]
    public void Has_every_promised_key_and_column()
    {
        JsonShape.AssertHas(
            _light,
            ("text", "time_utc"),
            ("object", "sun cell bands"),
            ("number", "leaf_area_m2 sunlit_leaf_area_m2 ground_sunlit_fraction sky_gap_fraction"));
        JsonShape.AssertHas(_light.GetProperty("sun"), ("number", "zenith_deg azimuth_deg"), ("list", "direction_in_cell"));
        JsonShape.AssertHas(_light.GetProperty("cell"), ("number", "across_m along_m"));
        foreach (var band in Bands)
        {
            JsonShape.AssertHas(
                _light.GetProperty("bands").GetProperty(band),
                ("number", "incident_direct_w_m2 incident_diffuse_w_m2 absorbed_leaves_w_m2 absorbed_wood_w_m2 absorbed_ground_w_m2 reflected_w_m2"));
        }

        Assert.Equal("leaf_id,area_m2,sunlit_fraction,absorbed_par_umol_m2_s,absorbed_nir_w_m2", _leaves.Header);
    }

    [Fact]
    public void Ten_in_the_morning_at_the_site_is_six_in_the_evening_at_greenwich()
    {
        Assert.Equal("2025-07-20T18:00:00Z", _light.GetProperty("time_utc").GetString());
        var sun = _light.GetProperty("sun");
        var asked = RunnerProcess.Run(
            Path.GetTempPath(), "sun", "--at", "2025-07-20T18:00:00Z", "--latitude", "38.4", "--longitude", "-122.3", "--elevation", "60");
        var cells = asked.Output.Split('\n')[1].Split(',');
        Assert.Equal(double.Parse(cells[1]), sun.GetProperty("zenith_deg").GetDouble(), 1e-5);
        Assert.Equal(double.Parse(cells[2]), sun.GetProperty("azimuth_deg").GetDouble(), 1e-5);

        // Rows run north and the block is level: x is east, y north, z up.
        var (sinZenith, cosZenith) = Math.SinCos(double.DegreesToRadians(double.Parse(cells[1])));
        var (sinAzimuth, cosAzimuth) = Math.SinCos(double.DegreesToRadians(double.Parse(cells[2])));
        var direction = sun.GetProperty("direction_in_cell").EnumerateArray().Select(part => part.GetDouble()).ToList();
        Assert.Equal(3, direction.Count);
        Assert.Equal(sinZenith * sinAzimuth, direction[0], 1e-5);
        Assert.Equal(sinZenith * cosAzimuth, direction[1], 1e-5);
        Assert.Equal(cosZenith, direction[2], 1e-5);
    }

    [Theory]
    [InlineData("par")]
    [InlineData("nir")]
    public void What_comes_in_is_absorbed_or_goes_up_again(string band)
    {
        var incident = Flux(band, "incident_direct") + Flux(band, "incident_diffuse");
        var gone = Flux(band, "absorbed_leaves") + Flux(band, "absorbed_wood") + Flux(band, "absorbed_ground") + Flux(band, "reflected");
        Assert.InRange(incident, 100, 700);
        Assert.Equal(incident, gone, 1e-3 * incident);
        foreach (var part in new[] { "absorbed_leaves", "absorbed_wood", "absorbed_ground", "reflected" })
            Assert.InRange(Flux(band, part), 1e-6, incident);
    }

    [Fact]
    public void Leaves_add_up_to_the_canopy()
    {
        var areas = _leaves.Numbers("area_m2").ToList();
        var area = areas.Sum();
        Assert.Equal(_light.GetProperty("leaf_area_m2").GetDouble(), area, Digits * area);
        var sunlit = areas.Zip(_leaves.Numbers("sunlit_fraction"), (leaf, fraction) => leaf * fraction).Sum();
        Assert.Equal(_light.GetProperty("sunlit_leaf_area_m2").GetDouble(), sunlit, Digits * area);
        Assert.InRange(sunlit, 0.05 * area, 0.95 * area);
        Assert.All(_leaves.Numbers("sunlit_fraction"), fraction => Assert.InRange(fraction, 0, 1));

        var ground = _light.GetProperty("cell").GetProperty("across_m").GetDouble() * _light.GetProperty("cell").GetProperty("along_m").GetDouble();
        var absorbed = areas.Zip(_leaves.Numbers("absorbed_nir_w_m2"), (leaf, flux) => leaf * flux).Sum() / ground;
        Assert.Equal(Flux("nir", "absorbed_leaves"), absorbed, Digits * absorbed);
    }

    [Fact]
    public void The_scene_has_the_same_leaves_with_the_same_areas()
    {
        var faces = PlyFaces.Read(run.File("scene.ply"));
        Assert.Contains(faces, face => face.LeafId == -1);
        var areas = faces.Where(face => face.LeafId >= 0)
            .GroupBy(face => face.LeafId, face => Vector3.Cross(face.B - face.A, face.C - face.A).Length() / 2.0)
            .ToDictionary(leaf => leaf.Key, leaf => leaf.Sum());
        var ids = _leaves.Column("leaf_id").Select(int.Parse).ToList();
        Assert.Equal(ids.Order(), areas.Keys.Order());
        foreach (var (id, area) in ids.Zip(_leaves.Numbers("area_m2"))) Assert.Equal(area, areas[id], (1e-3 * area) + 1e-9);
        Assert.Equal(_light.GetProperty("leaf_area_m2").GetDouble(), areas.Values.Sum(), 1e-4 * areas.Values.Sum());
    }

    // Rows stand 2.4 m apart and the row repeats after 1.5 m.
    [Fact]
    public void Sensors_read_the_light_above_in_and_beside_the_row()
    {
        var sensors = CsvRows.Read(run.File("sensors.csv"));
        Assert.Equal(
            "sensor,x_m,y_m,z_m,par_direct_umol_m2_s,par_diffuse_umol_m2_s,par_scattered_umol_m2_s,par_umol_m2_s,par_share_of_above,nir_w_m2",
            sensors.Header);
        Assert.Equal(["above", "ball", "from above", "zone", "alley", "copy"], sensors.Column("sensor"));
        var (par, share, nir) = (sensors.Numbers("par_umol_m2_s").ToList(), sensors.Numbers("par_share_of_above").ToList(), sensors.Numbers("nir_w_m2").ToList());
        Assert.Equal(4.57 * (Flux("par", "incident_direct") + Flux("par", "incident_diffuse")), par[0], 2e-5 * par[0]);
        Assert.Equal(1, share[0], 2e-5);
        Assert.Equal(Flux("nir", "incident_direct") + Flux("nir", "incident_diffuse"), nir[0], 2e-5 * nir[0]);

        // Over the canopy a sensor that looks down reads about what the block reflects, from its own place.
        Assert.Equal(4.57 * Flux("par", "reflected"), par[2], 0.3 * par[2]);
        Assert.Equal(Flux("nir", "reflected"), nir[2], 0.3 * nir[2]);
        Assert.InRange(share[1], 0.25, 0.75);
        Assert.InRange(share[3], 0.001, 0.6);
        Assert.InRange(share[4], share[3], 1.2);

        // The copy one cell on in both directions, but for the rounding of lengths that binary numbers do not hold.
        Assert.Equal(par[3], par[5], 0.005 * par[3]);
        var parts = new[] { "direct", "diffuse", "scattered" }.Select(part => sensors.Numbers($"par_{part}_umol_m2_s").ToList()).ToList();
        for (var sensor = 0; sensor < par.Count; sensor++) Assert.Equal(par[sensor], parts.Sum(part => part[sensor]), 1e-5 * par[0]);
    }

    [Fact]
    public void The_sensors_of_the_readme_are_read()
    {
        var lines = File.ReadAllLines(Path.Combine(RunnerProcess.Repository, "README.md"));
        using var folder = new TemporaryFolder();
        var table = lines.SkipWhile(line => line != "    sensor,x_m,y_m,z_m,facing").TakeWhile(line => line.Length > 0).Select(line => line[4..]);
        var sensors = SensorTable.Read(folder.Write("sensors.csv", string.Join('\n', table)), new Cell(2.4, 1.5), 0);
        Assert.Equal(["over the row", "fruit zone", "cluster"], sensors.Select(sensor => sensor.Name));
        Assert.Null(sensors[2].Sensor.Facing);
    }

    [Fact]
    public void The_fruit_zone_is_shadier_than_the_air_above()
    {
        var zone = _light.GetProperty("fruit_zone");
        var above = zone.GetProperty("par_above_umol_m2_s").GetDouble();
        Assert.Equal(4.57 * (Flux("par", "incident_direct") + Flux("par", "incident_diffuse")), above, 1e-5 * above);
        Assert.Equal(1.1, zone.GetProperty("height_m").GetDouble(), 1e-9);
        foreach (var name in new[] { "bar_up", "bar_right", "bar_left", "clusters" })
        {
            var share = zone.GetProperty($"{name}_share_of_above").GetDouble();
            Assert.InRange(share, 0.005, 0.5);
            Assert.Equal(zone.GetProperty($"{name}_par_umol_m2_s").GetDouble(), share * above, 1e-5 * above);
        }

        // At six in the evening of Greenwich, ten here, the sun stands in the east, to the right of a row that runs north.
        Assert.True(zone.GetProperty("bar_right_par_umol_m2_s").GetDouble() > zone.GetProperty("bar_left_par_umol_m2_s").GetDouble());
    }

    private double Flux(string band, string name) => _light.GetProperty("bands").GetProperty(band).GetProperty(name + "_w_m2").GetDouble();
}
