using CanopySim.Assessment;
using CanopySim.Files.Charts;
using CanopySim.Results;

namespace CanopySim.Files.Report;

/// <summary>Canopy, fruit and buds in sentences made from their numbers.</summary>
internal static class AssessmentSentences
{
    private const int MostNamed = 4;

    public static IReadOnlyList<string> SunburnCautions { get; } =
    [
        "Fruit that was shaded and is bared at once burns most; the west side and vines short of water suffer first. "
            + "Bare fruit early, on the morning's side, or not at all where it is hot.",
        "Look at the fruit in the row before leaves are pulled, and follow local advice for your cultivar and site.",
        "Heat harms people before fruit: follow local rules for work in heat.",
    ];

    public static string Sheet(IReadOnlyList<CanopySheetRow> rows, Units units)
    {
        // What lies inside is the rest of what lies outside: it counts once.
        var whole = rows.Where(row => row.Wall is null && row.Item is not ("interior_leaves" or "interior_clusters"))
            .ToList();
        var judged = whole.Count(row => row.Verdict is SheetVerdict.Below or SheetVerdict.Within or SheetVerdict.Above);
        var within = whole.Count(row => row.Verdict == SheetVerdict.Within);
        var outside =
            whole.Where(row => row.Value is not null && row.Verdict is SheetVerdict.Below or SheetVerdict.Above)
            .OrderByDescending(Distance).ToList();
        var named = string.Join("; ", outside.Take(MostNamed).Select(row =>
            $"{char.ToLowerInvariant(row.Name[0])}{row.Name[1..]}, {SheetMeasure.Text(row, row.Value!.Value, units)}, "
                + $"is {(row.Verdict == SheetVerdict.Above ? "above" : "below")} {SheetMeasure.Range(row, units)}"));
        var head = $"{within} of {judged} measures lie within their published range";
        return outside.Count == 0 ? $"{head}."
            : $"{head}. {(outside.Count > MostNamed ? "Farthest outside" : "Outside")}: {named}.";
    }

    public static string Light(FruitLightSummary light)
    {
        var share = light.ShareOfIncident is { } of
            ? $", {Measure.Number(100 * of, 0)} % of what falls on a level place over the canopy" : "";
        var split = light.MorningShare is { } morning
            ? $" {Measure.Number(100 * morning, 0)} % of it came before noon, "
                + $"{Measure.Number(100 * (1 - morning), 0)} % after."
            : "";
        return $"From veraison on the clusters received {Measure.Number(light.ParMolM2D, 1)} mol of PAR (light for "
            + $"photosynthesis) a day on each square meter of their surface{share}.{split}";
    }

    public static string Heat(FruitHeatSummary heat, Units units)
    {
        var worst = heat.Sides.MaxBy(side => side.HoursAtBrowning)!;
        var highest = "The warmest spot on a cluster reached "
            + $"{Measure.Temperature(units, heat.HighestSurfaceDegC, 0)} on {SeasonSentences.Date(heat.HighestOn)}, "
            + $"on the {heat.HighestSide.Facing} side";
        return worst.DaysAtBrowning == 0
            ? $"{highest}; that is below {Measure.Temperature(units, heat.BrowningDegC, 0)}, from which fruit in the "
                + "sun browns."
            : $"{highest}. On the {worst.Side.Facing} side some fruit was at "
                + $"{Measure.Temperature(units, heat.BrowningDegC, 0)} or more, where it browns, on "
                + $"{worst.DaysAtBrowning} {(worst.DaysAtBrowning == 1 ? "day" : "days")}.";
    }

    public static string NextYear(NextYearSummary year)
    {
        var shorter = year.LightFactor < year.TemperatureFactor ? "light" : "warmth";
        return "Light and warmth about the buds at the shoots' bases would make next year's shoots "
            + $"{Measure.Number(100 * year.Fruitfulness, 0)} % as fruitful as the best; {shorter} was the shorter of "
            + "the two.";
    }

    public static string Score(CanopyScoreSummary score) =>
        $"On the scorecard of canopies it would have {score.Points} of the {score.MostPoints} points that the model "
            + "can "
        + "see (levels from memory, Smart & Robinson 1991). Color and size of the leaves, ten points each, must be "
        + "judged in the row.";

    // How far outside, in widths of the range.
    private static double Distance(CanopySheetRow row)
    {
        if (row is not { Value: { } value, Low: { } low, High: { } high } || high <= low) return 0;
        return Math.Max(low - value, value - high) / (high - low);
    }
}
