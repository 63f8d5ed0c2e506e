using CanopySim.Results;

namespace CanopySim.Files.Charts;

/// <summary>The fruit and what the leaves can send it.</summary>
internal static class FruitCharts
{
    public static ChartSheet RipeningCapacity(SeasonResult season, SeasonSeries series, Units units)
    {
        var panel = new ChartPanel(units == Units.Us
            ? "g of sugar a day for each pound of fruit"
            : "g of sugar a day for each kg of fruit");
        var points = series.Of(d => d.RipeningCapacityGPerKgD is { } g ? Measure.SugarPerFruit.In(units, g) : null);
        panel.Line(points, ChartStyle.FaintLine, isThin: true);
        panel.Line(SeasonSeries.WeekMean(points), ChartStyle.Line, label: "mean of seven days");
        var caption = "Without fruit that ripens there is no ripening capacity.";
        if (!panel.IsEmpty && season.Summary is { RipeningCapacityGPerKgD: { } mean, Dates.Veraison: { } veraison }
            && double.IsFinite(mean))
        {
            var text = Measure.SugarPerFruit.Text(units, mean, 1);
            var end = season.Summary.Dates is { TargetSugar: { } ripe } ? ripe
                : season.Summary.Dates.Harvest ?? season.Summary.Dates.End;
            panel.Level(
                Measure.SugarPerFruit.In(units, mean), $"mean while ripening {text}",
                ChartAxis.PlaceOf(veraison), ChartAxis.PlaceOf(end));
            caption = $"What the leaves could send the fruit each day, {text} on average while it ripened; thin line "
                + "single days.";
        }

        return new ChartSheet(SeasonCharts.RipeningCapacity, "Ripening capacity", caption, series.Axis, [panel])
        {
            Stages = series.Stages,
            WhenEmpty = "no fruit to ripen in this season",
        };
    }

    public static ChartSheet Sugar(SeasonResult season, SeasonSeries series, double target)
    {
        var panel = new ChartPanel("Brix");
        panel.Line(series.Of(d => d.SugarBrix), ChartStyle.Line, label: "fruit");
        if (!panel.IsEmpty) panel.Level(target, $"target {Measure.Brix(target)}");
        var last = series.Days.LastOrDefault(d => d.SugarBrix is { } brix && double.IsFinite(brix));
        var caption = (season.Summary.Dates.TargetSugar, last) switch
        {
            ({ } ripe, _) => $"The fruit reached the target of {Measure.Brix(target)} on "
                + $"{ChartAxis.DayText(ripe, isShort: false)}.",
            (null, { SugarBrix: { } brix }) =>
                $"The fruit stood at {Measure.Number(brix, 1)} Brix on "
                    + $"{ChartAxis.DayText(last.Date, isShort: false)}, below the target of {Measure.Brix(target)}.",
            _ => season.Summary.Dates.Veraison is null
                ? "No sugar was loaded: veraison was not reached."
                : "No sugar was loaded: the vine carried no fruit.",
        };
        return new ChartSheet(SeasonCharts.Sugar, "Sugar of the fruit", caption, series.Axis, [panel])
        {
            Stages = series.Stages,
            WhenEmpty = "no sugar loaded in this season",
        };
    }
}
