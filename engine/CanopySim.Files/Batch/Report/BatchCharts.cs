using System.Globalization;
using CanopySim.Files.Charts;
using CanopySim.Sampling;

namespace CanopySim.Files.Batch.Report;

/// <summary>Charts of many seasons: bands in place of lines.</summary>
internal static class BatchCharts
{
    // As many rows as a phone can show.
    private const int MostKeys = 12;

    /// <summary>Sugar by date, as bands.</summary>
    public static ChartSheet Sugar(Ensemble ensemble, double? target)
    {
        var panel = new ChartPanel("Brix");
        var course = ensemble.SugarCourse();
        panel.Band([.. course.Select(day => ((double)day.Day, day.Brix.P10, day.Brix.P90))], ChartStyle.FourOfFive);
        panel.Band([.. course.Select(day => ((double)day.Day, day.Brix.P25, day.Brix.P75))], ChartStyle.Half);
        panel.Line(course.Select(day => new ChartPoint(day.Day, day.Brix.P50)), ChartStyle.Line, label: "median");
        if (target is { } level) panel.Level(level, "target");
        var caption = course.Count == 0
            ? "No fruit ripens in these seasons."
            : "The line is the median of all seasons, the dark band holds half of them, the light one four of five; a season that is over keeps its last sugar.";
        var (first, last) = course.Count == 0 ? (1, 365) : (course[0].Day, course[^1].Day);
        return new ChartSheet(Stem("sugar", ensemble), $"Sugar by date, {ensemble.Scenario}", caption, DaysOfYear(first, last), [panel])
        {
            WhenEmpty = "no fruit ripens",
        };
    }

    /// <summary>When the target sugar is reached, as columns of five days.</summary>
    public static ChartSheet Ripening(Ensemble ensemble)
    {
        var panel = new ChartPanel("% of all seasons");
        var days = ensemble.RipeningDays();
        foreach (var (day, seasons) in days)
        {
            var share = 100.0 * seasons / ensemble.Seasons;
            panel.Band([(day + 0.15, 0, share), (day + Ensemble.DaysOfColumn - 0.15, 0, share)], ChartStyle.Line);
        }

        var reached = days.Sum(day => day.Seasons);
        var caption = reached == 0
            ? "No season reaches the target sugar."
            : $"Each column is {Ensemble.DaysOfColumn} days; {reached} of {ensemble.Seasons} seasons reach the target sugar.";
        var (first, last) = days.Count == 0 ? (1, 365) : (days[0].Day - Ensemble.DaysOfColumn, days[^1].Day + (2 * Ensemble.DaysOfColumn));
        return new ChartSheet(Stem("ripening", ensemble), $"When the fruit is ripe, {ensemble.Scenario}", caption, DaysOfYear(first, last), [panel])
        {
            WhenEmpty = "the target sugar is not reached",
        };
    }

    /// <summary>Carbon gain by leaf age through the mean season.</summary>
    public static ChartSheet Carbon(Ensemble ensemble)
    {
        var panel = new ChartPanel("g of CO₂ per vine and day, mean of all seasons");
        var course = ensemble.CarbonCourse();
        panel.Stack(
            [.. course.Select(day => (double)day.Day)],
            // The oldest lowest, as in a season's chart.
            [.. Enumerable.Range(0, CoursesTable.AgeColumns.Count).Reverse().Select(age => (
                ChartStyle.AgeColor((age + 0.5) * CoursesTable.DaysOfAgeClass), (IReadOnlyList<double>)[.. course.Select(day => day.ByAge[age])]))]);
        var (first, last) = course.Count == 0 ? (1, 365) : (course[0].Day, course[^1].Day);
        return new ChartSheet(
            Stem("carbon", ensemble), $"Carbon gained, by age of leaf, {ensemble.Scenario}",
            $"Each band is what leaves of {CoursesTable.DaysOfAgeClass} days of age gained, in the colors of the key.", DaysOfYear(first, last), [panel])
        {
            HasAgeKey = true,
            WhenEmpty = "no leaves gained carbon",
        };
    }

    /// <summary>What the keys of the design do, with confidence intervals, the strongest first.</summary>
    public static ChartSheet Influences(Ensemble ensemble, Sensitivity sensitivity)
    {
        var panel = new ChartPanel(sensitivity.Morris is null ? "share of the variance" : "mean size of the effect, in the unit of the quantity") { HasScale = false };
        var shown = sensitivity.IsKnown ? sensitivity.Ranked.Take(MostKeys).ToList() : [];
        var (least, most) = (0.0, 0.0);
        for (var row = 0; row < shown.Count; row++)
        {
            var y = (double)(shown.Count - row);
            if (sensitivity.Morris is { } effects)
            {
                Draw(effects.Factors[shown[row]].MuStar, y, 0.3, ChartStyle.Line, ChartStyle.FourOfFive);
            }
            else
            {
                Draw(sensitivity.Sobol!.Factors[shown[row]].Total, y + 0.2, 0.16, ChartStyle.Line, ChartStyle.FourOfFive);
                Draw(sensitivity.Sobol.Factors[shown[row]].FirstOrder, y - 0.2, 0.16, ChartStyle.OptionLines[1], 0xE8DCC2);
            }

            panel.EndLabels.Add(new EndLabel(Short(sensitivity.Keys[shown[row]]), y, ChartStyle.Text));
        }

        var range = Math.Max(most - least, 1e-9);
        var caption = sensitivity.Morris is null
            ? "Blue: the share of the variance that a key explains with all that it does together with others (total order); ochre below: what it explains alone (first order). Bars are 95 % intervals."
            : "How much the quantity changes, on average, through the key's whole distribution (mu*); bars are 95 % intervals.";
        return new ChartSheet(
            Stem("influence-" + sensitivity.Outcome.Column.Replace('.', '-').Replace('_', '-'), ensemble), $"What decides: {sensitivity.Outcome.Name}", caption,
            new ChartAxis(least - (0.04 * range), most + (0.04 * range), null, size => Ticks(least, most, size.IsNarrow ? 2 : 4)), [panel])
        {
            EndLabelRoom = (230, 160),
            WhenEmpty = "nothing can be told",
        };

        void Draw(Estimate estimate, double y, double half, uint mark, uint interval)
        {
            (least, most) = (Math.Min(least, estimate.Low), Math.Max(most, estimate.High));
            panel.Band([(estimate.Low, y - half, y + half), (estimate.High, y - half, y + half)], interval);
            // Thin beside any interval: a hundredth of what is drawn.
            var width = 0.006 * Math.Max(most - least, 1e-9);
            panel.Band([(estimate.Value - width, y - half, y + half), (estimate.Value + width, y - half, y + half)], mark);
        }
    }

    /// <summary>A day of the year as a date of a year without 29 February.</summary>
    public static DateOnly DateOf(double day) => new DateOnly(2001, 1, 1).AddDays((int)Math.Round(day, MidpointRounding.AwayFromZero) - 1);

    // The key's last word or words; the table below has all of it.
    private static string Short(string key) => key[(key.LastIndexOf('.') + 1)..].Replace('_', ' ');

    private static string Stem(string name, Ensemble ensemble) => $"{name}-{Uri.EscapeDataString(ensemble.Scenario)}";

    private static ChartAxis DaysOfYear(int first, int last) => new(first, Math.Max(last, first + 1), null, size =>
    {
        var (start, end) = (DateOf(first), DateOf(last));
        var months = Enumerable.Range(0, 24).Select(month => new DateOnly(2001, 1, 1).AddMonths(month)).Where(month => month >= start && month <= end).ToList();
        IEnumerable<DateOnly> dates = months.Count >= 2 ? months : [start, end];
        return [.. dates.Select(date => ((double)(date.DayNumber - new DateOnly(2001, 1, 1).DayNumber + 1), date.Day == 1
            ? date.ToString(size.IsNarrow ? "MMM" : "MMMM", CultureInfo.InvariantCulture)
            : ChartAxis.DayText(date, isShort: true)))];
    });

    // Even steps of one, two or five units of a decimal place.
    private static IReadOnlyList<(double Place, string Label)> Ticks(double from, double to, int about)
    {
        var raw = Math.Max(to - from, 1e-9) / about;
        var power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        var step = power * (raw / power is var ratio && ratio < 1.5 ? 1 : ratio < 3.5 ? 2 : ratio < 7.5 ? 5 : 10);
        var decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(step)));
        var first = (int)Math.Ceiling(from / step);
        return [.. Enumerable.Range(first, (int)Math.Floor(to / step) - first + 1).Select(i => (i * step, Measure.Number(i * step, decimals)))];
    }
}
