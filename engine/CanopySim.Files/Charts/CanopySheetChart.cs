using CanopySim.Assessment;
using CanopySim.Results;

namespace CanopySim.Files.Charts;

/// <summary>
/// The canopy sheet as published ranges, each on a scale of its own, with the season's value marked on it.
/// </summary>
internal static class CanopySheetChart
{
    private const uint Range = 0xC9D3DC;

    // So far beyond an end of its range, in widths of the range, a value is marked at the edge.
    private const double Beyond = 0.95;

    private static readonly (string Item, string Name)[] Shown =
    [
        ("shoots_per_m", "shoots"), ("shoot_length", "shoot length"), ("lateral_nodes", "lateral nodes"),
            ("leaf_area", "leaf area"),
        ("leaf_area_density", "leaf density"), ("leaf_layers", "leaf layers"), ("gaps", "gaps"),
            ("exterior_leaves", "outer leaves"),
        ("exterior_clusters", "exposed fruit"), ("leaf_area_per_fruit", "leaf to fruit"),
            ("yield_to_prunings", "yield : prunings"),
        ("prunings", "prunings"),
    ];

    public static ChartSheet Of(SeasonResult season, Units units)
    {
        var panel = new ChartPanel("published range of each measure, its value marked") { HasScale = false };
        var rows = Shown
            .Select(shown =>
                (shown.Name,
                Row: season.Assessment.CanopySheet.FirstOrDefault(row => row.Item == shown.Item && row.Wall is null)))
            .Where(shown => shown.Row is { Value: { } value, Low: not null, High: not null } && double.IsFinite(value))
            .ToList();
        for (var i = 0; i < rows.Count; i++)
        {
            var (name, row) = (rows[i].Name, rows[i].Row!);
            var (y, low, high) = ((double)(rows.Count - i), row.Low!.Value, row.High!.Value);
            var place = Math.Clamp((row.Value!.Value - low) / (high - low), -Beyond, 1 + Beyond);
            panel.Band([(0, y - 0.3, y + 0.3), (1, y - 0.3, y + 0.3)], Range);
            panel.Band([(place - 0.015, y - 0.42, y + 0.42), (place + 0.015, y - 0.42, y + 0.42)], ChartStyle.Line);
            panel.EndLabels.Add(
                new EndLabel($"{name} {SheetMeasure.Text(row, row.Value.Value, units)}", y, ChartStyle.Text));
        }

        var within = rows.Count(shown => shown.Row!.Verdict == SheetVerdict.Within);
        var caption = rows.Count == 0
            ? "Without a canopy at veraison there is nothing to hold against the published ranges."
            : $"{within} of {rows.Count} measures lie in their published range, the gray bars; marks far outside "
                + "stand at the edge.";
        return new ChartSheet(
            SeasonCharts.CanopySheet, "Canopy sheet", caption,
            new ChartAxis(-1, 2, null, size =>
                [(0, size.IsNarrow ? "low" : "low end"), (1, size.IsNarrow ? "high" : "high end")]), [panel])
        {
            EndLabelRoom = (190, 172),
            WhenEmpty = "veraison was not reached",
        };
    }
}
