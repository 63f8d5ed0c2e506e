using CanopySim.Files.Charts;
using CanopySim.Results;

namespace CanopySim.Files.Comparison;

/// <summary>
/// Light on the clusters through the day, a field for each wind that sides look to, a line an option.
/// </summary>
internal static class ComparedFruitLight
{
    private static readonly string[] Winds =
        ["north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest"];

    // More fields would be too low to read; names more than these hide each other, so that the first field has them,
    // or all sides are drawn as one.
    private const int MostPanels = 4;
    private const int MostNamedEverywhere = 4;
    private const int MostApart = 6;
    private const string AllSides = "every";

    public static ChartSheet Sheet(IReadOnlyList<ComparedOption> options)
    {
        var hours = options.Select(HoursFromVeraison).ToList();
        var facings = hours.SelectMany(rows => rows)
            .Select(row => options.Count > MostApart ? AllSides : row.Side.Facing).Distinct()
            .OrderBy(facing => Array.IndexOf(Winds, facing)).ToList();
        var all = hours.SelectMany(rows => rows).Select(row => row.Hour).ToList();
        var (first, last) = all.Count > 0 ? (all.Min(), all.Max() + 1) : (4, 20);
        var panels = facings.Take(MostPanels).Select((facing, i) => Panel(facing, i == 0)).ToList();
        return new ChartSheet(
            ComparisonCharts.FruitLight, "Light on the fruit through the day", Caption(options, facings.Count),
            ChartAxis.OfHours(first, last, "hour of the day, standard time"),
            panels.Count > 0 ? panels : [new ChartPanel("PAR on the clusters' surface, µmol m⁻² s⁻¹")])
        {
            WhenEmpty = "no fruit to ripen in these seasons",
        };

        ChartPanel Panel(string facing, bool isFirst)
        {
            var panel = new ChartPanel($"{facing} side: PAR on the clusters' surface, µmol m⁻² s⁻¹");
            for (var i = 0; i < options.Count; i++)
            {
                var points = MeanDay(
                    [.. hours[i].Where(row => facing == AllSides || row.Side.Facing == facing)]);
                if (points.Count == 0) continue;
                panel.Line(points, ComparisonCharts.ColorOf(i), pattern: ComparisonCharts.PatternOf(i));
                if (!isFirst && options.Count > MostNamedEverywhere) continue;

                // All lines end at nothing: an option's name stands as high as its brightest hour.
                panel.EndLabels.Add(
                    new EndLabel(options[i].Name, points.Max(point => point.Y), ComparisonCharts.ColorOf(i)));
            }

            return panel;
        }
    }

    private static List<FruitLightHourRow> HoursFromVeraison(ComparedOption option) =>
        option.Summary.Dates.Veraison is { } veraison
            ? [.. option.Season.Assessment.FruitLightHours.Where(row => row.To >= veraison)]
            : [];

    // Sides of one field count alike, weeks too.
    private static List<ChartPoint> MeanDay(List<FruitLightHourRow> rows)
    {
        var days = (double)rows.Select(row => (row.From, row.Side)).Distinct().Count();
        return [.. rows.GroupBy(row => row.Hour).OrderBy(hour => hour.Key)
            .Select(hour => new ChartPoint(hour.Key + 0.5, hour.Sum(row => row.ParUmolM2S) / days))];
    }

    private static string Caption(IReadOnlyList<ComparedOption> options, int facings)
    {
        var shares = options.Where(option => option.Summary.FruitLight?.ShareOfIncident is not null).Select(option =>
            $"{option.Name} {Measure.Number(100 * option.Summary.FruitLight!.ShareOfIncident!.Value, 0)} %").ToList();
        if (shares.Count == 0) return "Without fruit that ripens there is no light on it.";
        var left = facings > MostPanels ? " Sides that look to further winds stand in the table." : "";
        return "Mean course of a day from veraison on. Of the light over the canopy falls on the clusters: "
            + $"{string.Join(", ", shares)}.{left}";
    }
}
