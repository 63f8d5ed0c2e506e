using CanopySim.Files.Charts;
using CanopySim.Fitting;

namespace CanopySim.Files.Forecast;

/// <summary>Charts of what the members of a forecast do together: a median in bands that hold half and four of five.</summary>
internal static class FanCharts
{
    /// <summary>What each fan's caption ends with.</summary>
    private const string HowToRead = "the line is the median, the dark band holds half of the members, the light one four of five";

    /// <summary>A quantity by date.</summary>
    /// <param name="stem">Stem of its files.</param>
    /// <param name="title">What it is.</param>
    /// <param name="unit">Unit over the axis.</param>
    /// <param name="saying">What to see, without its full stop.</param>
    /// <param name="fan">The quantity by date; a value that is not finite leaves a gap.</param>
    /// <param name="noted">What was noted of it.</param>
    /// <param name="marks">Days with names.</param>
    /// <param name="asOf">The day that an empty chart shows.</param>
    /// <param name="level">A height that is aimed at, with its name.</param>
    public static ChartSheet Fan(
        string stem, string title, string unit, string saying, IReadOnlyList<FanDay> fan,
        IReadOnlyList<(DateOnly Date, double Value)> noted, IReadOnlyList<StageMark> marks, DateOnly asOf,
        (double Y, string Name)? level = null)
    {
        var panel = new ChartPanel(unit);
        var known = fan.Where(day => double.IsFinite(day.P50)).ToList();
        panel.Band([.. known.Select(day => (ChartAxis.PlaceOf(day.Date), day.P10, day.P90))], ChartStyle.FourOfFive);
        panel.Band([.. known.Select(day => (ChartAxis.PlaceOf(day.Date), day.P25, day.P75))], ChartStyle.Half);
        panel.Line(
            known.Select(day => new ChartPoint(ChartAxis.PlaceOf(day.Date), day.P50)), ChartStyle.Line, label: "median");
        panel.Dots(
            noted.Select(note => new ChartPoint(ChartAxis.PlaceOf(note.Date), note.Value)), ChartStyle.Text,
            noted.Count > 0 ? "noted" : null);
        if (level is { } aim && known.Count > 0) panel.Level(aim.Y, aim.Name);
        var dots = noted.Count > 0 ? "; dots are what was noted" : "";
        return new ChartSheet(
            stem, title, known.Count == 0 ? $"{saying}." : $"{saying}: {HowToRead}{dots}.", AxisOf([.. known.Select(day => day.Date)], asOf), [panel])
        {
            Stages = marks,
            WhenEmpty = "nothing to show yet",
        };
    }

    /// <summary>The share of members that have reached something by each day.</summary>
    public static ChartSheet Chance(
        string stem, string title, string caption, IReadOnlyList<(DateOnly Date, double Chance)> byDate,
        IReadOnlyList<StageMark> marks, DateOnly asOf)
    {
        var panel = new ChartPanel("% of the members") { Ceiling = 100 };
        panel.Line(byDate.Select(day => new ChartPoint(ChartAxis.PlaceOf(day.Date), 100 * day.Chance)), ChartStyle.Line);
        return new ChartSheet(stem, title, caption, AxisOf([.. byDate.Select(day => day.Date)], asOf), [panel])
        {
            Stages = marks,
            WhenEmpty = "not reached by any member",
        };
    }

    /// <summary>Shares by leaf age as columns in the colors of age, each with the range of four of five members.</summary>
    public static ChartSheet Ages(
        string stem, string title, string caption, IReadOnlyList<(int FromD, int ToD, double P10, double Mean, double P90)> shares)
    {
        var panel = new ChartPanel("% of the carbon that leaves gain while the fruit ripens; thin lines four of five members");
        var end = 180.0;
        foreach (var share in shares)
        {
            // The last class may be open at its end; ten days of it are drawn.
            var to = Math.Min(share.ToD, share.FromD + FeedingLeaves.WidestClosedClassD);
            end = Math.Max(end, to);
            panel.Band(
                [(share.FromD + 0.5, Math.Min(0, 100 * share.Mean), Math.Max(0, 100 * share.Mean)),
                 (to - 0.5, Math.Min(0, 100 * share.Mean), Math.Max(0, 100 * share.Mean))],
                ChartStyle.AgeClassOf(share.FromD).Rgb);
        }

        foreach (var share in shares)
        {
            var middle = share.FromD + (0.5 * (Math.Min(share.ToD, share.FromD + FeedingLeaves.WidestClosedClassD) - share.FromD));
            panel.Line([new ChartPoint(middle, 100 * share.P10), new ChartPoint(middle, 100 * share.P90)], ChartStyle.Text, isThin: true);
        }

        return new ChartSheet(stem, title, caption, ChartAxis.OfDays(end, 30, "age of leaf, days"), [panel])
        {
            HasAgeKey = true,
            WhenEmpty = "no fruit will be fed",
        };
    }

    private static ChartAxis AxisOf(IReadOnlyList<DateOnly> days, DateOnly asOf) =>
        days.Count == 0 ? ChartAxis.OfDates(asOf, asOf) : ChartAxis.OfDates(days[0], days[^1]);
}
