using CanopySim.Results;

namespace CanopySim.Files.Charts;

/// <summary>What the charts of a season share: its dates, its stages, and its columns as points.</summary>
internal sealed class SeasonSeries(SeasonResult season)
{
    private const int DaysBeforeBudbreak = 7;

    /// <summary>A week's mean: weather changes by the day, the vine does not.</summary>
    private const int DaysToEitherSide = 3;

    public IReadOnlyList<DayRow> Days { get; } = [.. season.Days.OrderBy(d => d.Date)];

    public ChartAxis Axis
    {
        get
        {
            var dates = season.Summary.Dates;
            var last = Days.Count > 0 ? Days[^1].Date : dates.End;
            var first = Days.Count > 0 ? Days[0].Date : dates.End;
            if (dates.Budbreak is { } budbreak && first < budbreak.AddDays(-DaysBeforeBudbreak) && budbreak <= last)
                first = budbreak.AddDays(-DaysBeforeBudbreak);
            return ChartAxis.OfDates(first, last);
        }
    }

    public IReadOnlyList<StageMark> Stages
    {
        get
        {
            var dates = season.Summary.Dates;
            List<StageMark> stages = [];
            Add("budbreak", dates.Budbreak);
            Add("bloom", dates.Bloom);
            Add("veraison", dates.Veraison);
            Add("ripe", dates.TargetSugar);
            return stages;

            void Add(string name, DateOnly? date)
            {
                if (date is { } day) stages.Add(new StageMark(name, day));
            }
        }
    }

    public IReadOnlyList<ChartPoint> Of(Func<DayRow, double?> column) =>
        [.. Days.Select(d => new ChartPoint(ChartAxis.PlaceOf(d.Date), column(d) ?? double.NaN))];

    /// <summary>Mean of the values within three days of each; none where the day itself has none.</summary>
    public static IReadOnlyList<ChartPoint> WeekMean(IReadOnlyList<ChartPoint> points)
    {
        var means = new ChartPoint[points.Count];
        for (var i = 0; i < points.Count; i++)
        {
            if (!double.IsFinite(points[i].Y))
            {
                means[i] = points[i];
                continue;
            }

            var (sum, count) = (0.0, 0);
            for (var j = Math.Max(0, i - DaysToEitherSide); j <= Math.Min(points.Count - 1, i + DaysToEitherSide); j++)
            {
                if (!double.IsFinite(points[j].Y) || Math.Abs(points[j].X - points[i].X) > DaysToEitherSide) continue;
                sum += points[j].Y;
                count++;
            }

            means[i] = points[i] with { Y = sum / count };
        }

        return means;
    }

    /// <summary>
    /// A column of the leaf ages as layers for a stack, oldest leaves first: at the bottom, as on the shoot.
    /// </summary>
    public (IReadOnlyList<double> Xs, IReadOnlyList<(uint Rgb, IReadOnlyList<double> Values)> Layers) ByAge(
        Func<LeafAgeRow, double> column, bool asWeekMean)
    {
        var (first, last) = (Axis.Min, Axis.Max);
        var rows = season.LeafAges
            .Where(r => ChartAxis.PlaceOf(r.Date) >= first && ChartAxis.PlaceOf(r.Date) <= last)
            .ToLookup(r => r.Date);

        // Days without leaves belong to the stack, as zeros, or a line would bridge them.
        var dates = Days.Select(d => d.Date).Concat(rows.Select(g => g.Key)).Distinct().Order().ToList();
        List<(uint, IReadOnlyList<double>)> layers = [];
        foreach (var ages in ChartStyle.AgeClasses.Reverse())
        {
            IReadOnlyList<ChartPoint> points =
            [
                .. dates.Select(date => new ChartPoint(
                    ChartAxis.PlaceOf(date),
                    rows[date].Where(r => ChartStyle.AgeClassOf(r.AgeFromD) == ages).Select(column)
                        .Where(double.IsFinite).Sum())),
            ];
            if (asWeekMean) points = WeekMean(points);
            layers.Add((ages.Rgb, [.. points.Select(p => p.Y)]));
        }

        return ([.. dates.Select(ChartAxis.PlaceOf)], layers);
    }
}
