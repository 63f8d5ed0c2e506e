using CanopySim.Assessment;
using CanopySim.Files.Report;
using CanopySim.Results;

namespace CanopySim.Files.Results;

/// <summary>
/// Writes the tables of the assessment: canopy sheet, light and heat on the fruit. All metric; walls count from 1.
/// </summary>
public static class AssessmentCsv
{
    public const string SheetFile = "canopy_sheet.csv";

    public const string LightFile = "fruit_light.csv";

    public const string HoursFile = "fruit_light_hours.csv";

    public const string HeatFile = "fruit_heat.csv";

    private static readonly CsvColumn<CanopySheetRow>[] Sheet =
    [
        CsvColumn<CanopySheetRow>.Words("item", row => row.Item),
        CsvColumn<CanopySheetRow>.Words("name", row => row.Name),
        CsvColumn<CanopySheetRow>.Words("at", row => row.At),
        CsvColumn<CanopySheetRow>.Words("wall", row => row.Wall is { } wall ? $"{wall}" : "all"),
        CsvColumn<CanopySheetRow>.Optional("value", row => row.Value),
        CsvColumn<CanopySheetRow>.Words("unit", row => row.Unit),
        CsvColumn<CanopySheetRow>.Optional("sampling_error", row => row.SamplingError),
        CsvColumn<CanopySheetRow>.Optional("published_low", row => row.Low),
        CsvColumn<CanopySheetRow>.Optional("published_high", row => row.High),
        CsvColumn<CanopySheetRow>.Words("verdict", row => VerdictOf(row.Verdict)),
        CsvColumn<CanopySheetRow>.Words("mark", row => MarkWords.Of(row.Mark)),
        CsvColumn<CanopySheetRow>.Words("source", row => row.Source),
        CsvColumn<CanopySheetRow>.Words("meaning", row => row.Meaning),
    ];

    private static readonly CsvColumn<FruitLightRow>[] Light =
    [
        CsvColumn<FruitLightRow>.Date("date", row => row.Date),
        .. SideOf<FruitLightRow>(row => row.Side),
        CsvColumn<FruitLightRow>.Whole("clusters", row => row.Clusters),
        CsvColumn<FruitLightRow>.Number("par_mol_m2_d", row => row.ParMolM2),
        CsvColumn<FruitLightRow>.Number("incident_par_mol_m2_d", row => row.IncidentParMolM2),
        CsvColumn<FruitLightRow>.Optional("share_of_incident", row => row.ShareOfIncident),
        CsvColumn<FruitLightRow>.Number("sunlit_share", row => row.SunlitShare),
        CsvColumn<FruitLightRow>.Optional("morning_share", row => row.MorningShare),
    ];

    private static readonly CsvColumn<FruitLightHourRow>[] Hours =
    [
        CsvColumn<FruitLightHourRow>.Date("from", row => row.From),
        CsvColumn<FruitLightHourRow>.Date("to", row => row.To),
        CsvColumn<FruitLightHourRow>.Whole("hour", row => row.Hour),
        .. SideOf<FruitLightHourRow>(row => row.Side),
        CsvColumn<FruitLightHourRow>.Number("par_umol_m2_s", row => row.ParUmolM2S),
        CsvColumn<FruitLightHourRow>.Number("incident_par_umol_m2_s", row => row.IncidentParUmolM2S),
        CsvColumn<FruitLightHourRow>.Number("sunlit_share", row => row.SunlitShare),
        CsvColumn<FruitLightHourRow>.Number("air_degc", row => row.AirTemperatureDegC),
        CsvColumn<FruitLightHourRow>.Number("surface_degc", row => row.SurfaceTemperatureDegC),
    ];

    private static readonly CsvColumn<FruitHeatRow>[] Heat =
    [
        CsvColumn<FruitHeatRow>.Date("date", row => row.Date),
        .. SideOf<FruitHeatRow>(row => row.Side),
        CsvColumn<FruitHeatRow>.Number("highest_air_degc", row => row.HighestAirDegC),
        CsvColumn<FruitHeatRow>.Number("highest_surface_degc", row => row.HighestSurfaceDegC),
        CsvColumn<FruitHeatRow>.Number("highest_above_air_degc", row => row.HighestAboveAirDegC),
        CsvColumn<FruitHeatRow>.Number("hours_at_browning", row => row.HoursAtBrowning),
        CsvColumn<FruitHeatRow>.Number("hours_at_necrosis", row => row.HoursAtNecrosis),
    ];

    public static void Write(Func<string, string> file, AssessmentResult result)
    {
        CsvTable.Write(file(SheetFile), Sheet, result.CanopySheet);
        CsvTable.Write(file(LightFile), Light, result.FruitLight);
        CsvTable.Write(file(HoursFile), Hours, result.FruitLightHours);
        CsvTable.Write(file(HeatFile), Heat, result.FruitHeat);
    }

    /// <summary>The word of a verdict in tables and reports.</summary>
    public static string VerdictOf(SheetVerdict verdict) => verdict switch
    {
        SheetVerdict.Below => "below",
        SheetVerdict.Within => "within",
        SheetVerdict.Above => "above",
        SheetVerdict.JudgeInRow => "judge in the row",
        _ => "not reached",
    };

    private static IEnumerable<CsvColumn<T>> SideOf<T>(Func<T, FruitSide> side) =>
    [
        CsvColumn<T>.Whole("wall", row => side(row).Wall + 1),
        CsvColumn<T>.Words("side", row => side(row).Name),
        CsvColumn<T>.Words("facing", row => side(row).Facing),
        CsvColumn<T>.Words("part_of_day", row => side(row).PartOfDay),
    ];
}
