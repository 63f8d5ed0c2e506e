using System.Globalization;
using CanopySim.Files.Results;
using static CanopySim.Files.Results.CsvColumn<CanopySim.Files.Moments.LeafLightRow>;

namespace CanopySim.Files.Moments;

/// <summary>Writes <c>light.json</c> and the moment's <c>leaves.csv</c>.</summary>
public static class LightFiles
{
    public const string JsonName = "light.json";

    public const string LeavesName = "leaves.csv";

    private static readonly CsvColumn<LeafLightRow>[] Columns =
    [
        Whole("leaf_id", row => row.LeafId),
        Number("area_m2", row => row.AreaM2),
        Number("sunlit_fraction", row => row.SunlitFraction),
        Number("absorbed_par_umol_m2_s", row => row.AbsorbedParUmolM2S),
        Number("absorbed_nir_w_m2", row => row.AbsorbedNirWM2),
    ];

    public static void WriteLeaves(string path, IEnumerable<LeafLightRow> rows) => CsvTable.Write(path, Columns, rows);

    public static void WriteJson(string path, LightMoment moment) => File.WriteAllText(path, Json(moment));

    public static string Json(LightMoment moment)
    {
        var json = Start(moment);
        if (moment.FruitZone is { } zone) json.Object("fruit_zone", inner => WriteFruitZone(inner, zone));
        return json.Finish();
    }

    private static JsonFile Start(LightMoment moment) => new JsonFile()
        .Text("time_utc", moment.TimeUtc.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture))
        // Every digit, so that another program can take the same sun and close the same energy.
        .Object("sun", json => json
            .Exact("zenith_deg", moment.SunZenithDeg)
            .Exact("azimuth_deg", moment.SunAzimuthDeg)
            .ExactList(
                "direction_in_cell",
                [moment.SunDirectionInCell.X, moment.SunDirectionInCell.Y, moment.SunDirectionInCell.Z]))
        .Object("cell", json => json.Exact("across_m", moment.CellAcrossM).Exact("along_m", moment.CellAlongM))
        .Exact("leaf_area_m2", moment.LeafAreaM2)
        .Exact("sunlit_leaf_area_m2", moment.SunlitLeafAreaM2)
        .Exact("ground_sunlit_fraction", moment.GroundSunlitFraction)
        .Exact("sky_gap_fraction", moment.SkyGapFraction)
        .Object("bands", json => json
            .Object("par", inner => WriteBand(inner, moment.Par))
            .Object("nir", inner => WriteBand(inner, moment.Nir)));

    private static void WriteFruitZone(JsonFile json, FruitZoneMoment zone)
    {
        json.Number("height_m", zone.HeightM).Number("par_above_umol_m2_s", zone.ParAboveUmolM2S);
        Write("bar_up", zone.UpUmolM2S);
        Write("bar_right", zone.RightUmolM2S);
        Write("bar_left", zone.LeftUmolM2S);
        Write("clusters", zone.ClustersUmolM2S);

        void Write(string name, double? par) => json
            .Number($"{name}_par_umol_m2_s", par)
            .Number($"{name}_share_of_above", zone.ParAboveUmolM2S > 0 ? par / zone.ParAboveUmolM2S : null);
    }

    private static void WriteBand(JsonFile json, LightBand band) => json
        .Exact("incident_direct_w_m2", band.IncidentDirectWM2)
        .Exact("incident_diffuse_w_m2", band.IncidentDiffuseWM2)
        .Exact("absorbed_leaves_w_m2", band.AbsorbedLeavesWM2)
        .Exact("absorbed_wood_w_m2", band.AbsorbedWoodWM2)
        .Exact("absorbed_ground_w_m2", band.AbsorbedGroundWM2)
        .Exact("reflected_w_m2", band.ReflectedWM2);
}
