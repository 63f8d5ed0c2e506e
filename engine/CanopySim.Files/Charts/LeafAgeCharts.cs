using CanopySim.Results;

namespace CanopySim.Files.Charts;

/// <summary>What leaves of each age have, gain and give.</summary>
internal static class LeafAgeCharts
{
    private const int CurveStepDays = 30;

    public static ChartSheet Carbon(SeasonResult season, SeasonSeries series, Units units)
    {
        var panel = new ChartPanel($"{Measure.SmallMass.Unit(units)} of CO₂ per vine and day, mean of seven days");
        var (xs, layers) =
            series.ByAge(r => Measure.SmallMass.In(units, r.NetAssimilationGCo2PerVine), asWeekMean: true);
        panel.Stack(xs, layers);
        var caption = FeedingLeaves.Of(season.Summary) is { } leaves
            ? $"Each band is what leaves of one age gained; while the fruit ripened, leaves {leaves.AgesText} gave "
                + $"{leaves.PercentText} of it."
            : panel.IsEmpty ? "No leaves gained carbon in this season."
            : "Each band is what leaves of one age gained: where it is wide, leaves of that age carry the vine.";
        return new ChartSheet(
            SeasonCharts.CarbonByLeafAge, "Carbon gained, by age of leaf", caption, series.Axis, [panel])
        {
            Stages = series.Stages,
            HasAgeKey = true,
            WhenEmpty = "no leaves gained carbon in this season",
        };
    }

    public static ChartSheet LeafArea(SeasonResult season, SeasonSeries series, Units units)
    {
        var panel = new ChartPanel($"{Measure.LeafArea.Unit(units)} of leaf per vine");
        var (xs, layers) = series.ByAge(r => Measure.LeafArea.In(units, r.LeafAreaM2PerVine), asWeekMean: false);
        panel.Stack(xs, layers);
        var largest = season.Days.Where(d => double.IsFinite(d.LeafAreaM2PerVine)).MaxBy(d => d.LeafAreaM2PerVine);
        var caption = largest is null || largest.LeafAreaM2PerVine <= 0
            ? "Leaf area of each age through the season."
            : $"Leaf area of each age; the most, {Measure.LeafArea.Text(units, largest.LeafAreaM2PerVine, 1)} a vine, "
                + $"on {ChartAxis.DayText(largest.Date, isShort: false)}.";
        return new ChartSheet(
            SeasonCharts.LeafAreaByLeafAge, "Leaf area, by age of leaf", caption, series.Axis, [panel])
        {
            Stages = series.Stages,
            HasAgeKey = true,
            WhenEmpty = "no leaves in this season",
        };
    }

    /// <summary>Shares of the ripening weeks' carbon as columns, one a class of the results.</summary>
    public static ChartSheet FruitCarbon(SeasonResult season)
    {
        var hasFruit = FeedingLeaves.HasFruit(season.Summary);
        var shares = hasFruit ? season.Summary.RipeningCarbonByLeafAge.Where(s => double.IsFinite(s.Share)).ToList()
            : [];
        var panel = new ChartPanel("% of the carbon that leaves gained while the fruit ripened");
        var end = 180.0;
        foreach (var share in shares)
        {
            // The last class may be open at its end; ten days of it are drawn.
            var to = Math.Min(share.ToD, share.FromD + FeedingLeaves.WidestClosedClassD);
            end = Math.Max(end, to);
            panel.Band(
                [(share.FromD + 0.5, Math.Min(0, 100 * share.Share), Math.Max(0, 100 * share.Share)),
                 (to - 0.5, Math.Min(0, 100 * share.Share), Math.Max(0, 100 * share.Share))],
                ChartStyle.AgeClassOf(share.FromD).Rgb);
        }

        var caption = FeedingLeaves.Of(shares) is { } leaves
            ? $"Leaves {leaves.AgesText} gave {leaves.PercentText} of the carbon that the leaves gained from veraison "
                + "on."
            : season.Summary.Dates.Veraison is null
                ? "Without veraison there are no ripening weeks, so no leaves fed ripening fruit."
            : hasFruit ? "From veraison on the leaves together gained no carbon."
            : "The vine carried no fruit, so no leaves fed any.";
        return new ChartSheet(
            SeasonCharts.FruitCarbonByLeafAge, "Which leaves fed the fruit", caption,
            ChartAxis.OfDays(end, CurveStepDays, "age of leaf, days"), [panel])
        {
            WhenEmpty = season.Summary.Dates.Veraison is null ? "veraison was not reached" : "no fruit was fed",
        };
    }

    public static ChartSheet Curve(SeasonResult season)
    {
        var points = season.AgeCurve.Points.Where(p => double.IsFinite(p.Age) && double.IsFinite(p.Efficiency))
            .ToList();
        var panel = new ChartPanel("% of a leaf's own best photosynthetic capacity");
        var end = Math.Max(CurveStepDays, points.Count > 0 ? points[^1].Age : 0);
        if (points.Count > 0)
        {
            foreach (var ages in ChartStyle.AgeClasses)
            {
                var to = Math.Min(end, ages.ToD ?? end);
                if (ages.FromD >= to) continue;
                panel.Band(
                    [.. Places(points, ages.FromD, to).Select(x => (x, 0.0, 100 * season.AgeCurve.At(x)))], ages.Rgb);
            }

            panel.Line(
                Places(points, 0, end).Select(x => new ChartPoint(x, 100 * season.AgeCurve.At(x))), ChartStyle.Text);
        }

        var best = points.Count > 0 ? points.Max(p => p.Efficiency) : 0;
        var bestAges = points.Where(p => p.Efficiency == best).Select(p => p.Age).ToList();
        var caption = bestAges.Count == 0
            ? "The efficiency of a leaf by its age, as used here."
            : $"A leaf is at its best {AgesText(bestAges[0], bestAges[^1])} after it unfolds; this curve was used for "
                + "every leaf.";
        return new ChartSheet(
            SeasonCharts.LeafAgeCurve, "Efficiency of a leaf by its age", caption,
            ChartAxis.OfDays(end, CurveStepDays, "age of leaf, days"), [panel])
        {
            HasAgeKey = true,
        };
    }

    private static string AgesText(double from, double to) => from < to
        ? $"{Measure.Number(from, 0)} to {Measure.Number(to, 0)} days"
        : $"{Measure.Number(from, 0)} days";

    private static IEnumerable<double> Places(IReadOnlyList<Growth.LeafAgePoint> points, double from, double to) =>
        points.Select(p => p.Age).Where(a => a > from && a < to).Prepend(from).Append(to);
}
