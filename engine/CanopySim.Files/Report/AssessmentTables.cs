using CanopySim.Assessment;
using CanopySim.Files.Charts;
using CanopySim.Results;

namespace CanopySim.Files.Report;

/// <summary>Canopy sheet, light and heat on the fruit and next year's buds as rows of a report.</summary>
internal static class AssessmentTables
{
    private const string None = "–";

    public static IReadOnlyList<string> LightHeads { get; } =
    [
        "Clusters", "PAR a day, mol/m²", "Of the light over the canopy", "Surface in the sun", "Before noon",
    ];

    /// <summary>What stands under the table of heat.</summary>
    public static string HeatBasis(FruitHeatSummary heat, double compactness, Units units) =>
        "Hours are means over the clusters of a side, from set to the season's end. The warmest spot is that of a "
            + "berry "
        + "that faces the sun in the hour's mean wind (half of that over the canopy), of clusters "
        + $"{Measure.Number(100 * compactness, 0)} % closed. Browning from about "
        + $"{Measure.Temperature(units, heat.BrowningDegC, 0)} and dead skin from about "
        + $"{Measure.Temperature(units, heat.NecrosisDegC, 0)} are rough guides from memory.";

    public static IReadOnlyList<string> HeatHeads(FruitHeatSummary heat, Units units)
    {
        var browning = Measure.Temperature(units, heat.BrowningDegC, 0);
        var necrosis = Measure.Temperature(units, heat.NecrosisDegC, 0);
        return
        [
            "Warmest spot", $"Hours at {browning} and more", $"Hours at {necrosis} and more", $"Days with {browning}",
        ];
    }

    /// <summary>A row a side: its name, then what <see cref="LightHeads"/> say.</summary>
    public static IEnumerable<IReadOnlyList<string>> Light(FruitLightSummary light) =>
        light.Sides.Select(side => (IReadOnlyList<string>)
        [
            SideOf(side.Side, light.Sides.Max(other => other.Side.Wall)), $"{side.Clusters}",
            Measure.Number(side.ParMolM2D, 1), Percent(side.ShareOfIncident), Percent(side.SunlitShare),
            Percent(side.MorningShare),
        ]);

    /// <summary>A row a side: its name, then what <see cref="HeatHeads"/> say.</summary>
    public static IEnumerable<IReadOnlyList<string>> Heat(FruitHeatSummary heat, Units units) =>
        heat.Sides.Select(side => (IReadOnlyList<string>)
        [
            SideOf(side.Side, heat.Sides.Max(other => other.Side.Wall)),
            Measure.Temperature(units, side.HighestSurfaceDegC, 1), Measure.Number(side.HoursAtBrowning, 1),
            Measure.Number(side.HoursAtNecrosis, 1), $"{side.DaysAtBrowning}",
        ]);

    public static IEnumerable<IReadOnlyList<string>> NextYear(NextYearSummary year, Scenario scenario, Units units)
    {
        var needed = scenario.Fruitfulness;
        yield return ["Expected fruitfulness, share of the best", Percent(year.Fruitfulness)];
        yield return ["From the darkest to the brightest shoot", $"{Percent(year.Least)} to {Percent(year.Most)}"];
        yield return ["Share that light leaves", Percent(year.LightFactor)];
        yield return ["Share that warmth leaves", Percent(year.TemperatureFactor)];
        yield return ["PAR about noon on the lowest leaves", $"{Measure.Number(year.ParUmolM2S, 0)} µmol m⁻² s⁻¹"];
        yield return ["PAR from which it is enough", $"{Measure.Number(needed.FullLight, 0)} µmol m⁻² s⁻¹"];
        yield return ["Warm enough from", Measure.Temperature(units, needed.FullTemperature, 1)];
        yield return ["Buds were laid down", $"{SeasonSentences.Date(year.From)} to {SeasonSentences.Date(year.To)}"];
    }

    public static string NameOf(CanopySheetRow row) => row.Wall is { } wall ? $"{row.Name}, wall {wall}" : row.Name;

    public static string ValueOf(CanopySheetRow row, Units units)
    {
        if (row.Value is not { } value || !double.IsFinite(value)) return None;
        return row.SamplingError is { } error
            ? $"{SheetMeasure.Number(row, value, units)} ± {SheetMeasure.Text(row, error, units)}"
            : SheetMeasure.Text(row, value, units);
    }

    /// <summary>The source, with how sure it is where it does not say so itself.</summary>
    public static string SourceOf(CanopySheetRow row) =>
        row.Source.Contains("from memory", StringComparison.Ordinal)
        || row.Source.StartsWith("derived", StringComparison.Ordinal)
            ? row.Source
            : $"{row.Source} ({MarkWords.Of(row.Mark)})";

    public static string SideOf(FruitSide side, int lastWall) =>
        lastWall > 0 ? $"{side.Facing} side of wall {side.Wall + 1}" : $"{side.Facing} side";

    public static string Percent(double? share) =>
        share is { } s && double.IsFinite(s) ? $"{Measure.Number(100 * s, 0)} %" : None;
}
