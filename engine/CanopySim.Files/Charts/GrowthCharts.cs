using CanopySim.Results;

namespace CanopySim.Files.Charts;

/// <summary>Shoots, and the light and water that they live on.</summary>
internal static class GrowthCharts
{
    public static ChartSheet Shoots(SeasonResult season, SeasonSeries series, Units units)
    {
        var length = new ChartPanel($"length of a shoot, {Measure.Length.Unit(units)}");
        length.Line(series.Of(d => Measure.Length.In(units, d.ShootLengthCm)), ChartStyle.Line, label: "length");
        var nodes = new ChartPanel("unfolded leaves on a shoot");
        nodes.Line(series.Of(d => d.NodesPerShoot), ChartStyle.Line, label: "nodes");
        var last = series.Days.LastOrDefault(d => double.IsFinite(d.ShootLengthCm) && double.IsFinite(d.NodesPerShoot));
        var caption = last is null
            ? "Length and nodes of a mean shoot."
            : $"A mean shoot ends the season at {Measure.Length.Text(units, last.ShootLengthCm, 0)} and "
                + $"{Measure.Number(last.NodesPerShoot, 0)} nodes"
              + (season.Summary.NodesAtBloom is { } atBloom ? $"; {Measure.Number(atBloom, 0)} of them stood at bloom."
                  : ".");
        return new ChartSheet(SeasonCharts.ShootGrowth, "Growth of a mean shoot", caption, series.Axis, [length, nodes])
        {
            Stages = series.Stages,
        };
    }

    public static ChartSheet Light(SeasonResult season, SeasonSeries series)
    {
        var panel = new ChartPanel("% of the photosynthetically active light (PAR)") { Ceiling = 100 };
        var points = series.Of(d => 100 * d.FractionParAbsorbed);
        panel.Line(points, ChartStyle.FaintLine, isThin: true);
        panel.Line(SeasonSeries.WeekMean(points), ChartStyle.Line, label: "mean of seven days");
        var atVeraison = season.Days.FirstOrDefault(d => d.Date == season.Summary.Dates.Veraison);
        var caption = atVeraison is null || !double.IsFinite(atVeraison.FractionParAbsorbed)
            ? "Share of the light on the block that the leaves take up; the rest falls on ground and wood or is "
                + "thrown back."
            : $"At veraison the leaves take up {Measure.Number(100 * atVeraison.FractionParAbsorbed, 0)} % of the "
                + "light on the block; thin line single days.";
        return new ChartSheet(SeasonCharts.Light, "Light taken up by the leaves", caption, series.Axis, [panel])
        {
            Stages = series.Stages,
        };
    }

    public static ChartSheet Water(SeasonSeries series, Units units)
    {
        var soil = new ChartPanel("water left in the soil, % of what the vine can draw") { Ceiling = 100 };
        soil.Line(series.Of(d => 100 * d.SoilWaterFraction), ChartStyle.Line, label: "soil water");
        var use = new ChartPanel($"{Measure.Volume.Unit(units)} transpired per vine and day");
        var points = series.Of(d => Measure.Volume.In(units, d.TranspirationLPerVine));
        use.Line(points, ChartStyle.FaintLine, isThin: true);
        use.Line(SeasonSeries.WeekMean(points), ChartStyle.Line, label: "mean of seven days");
        var driest = series.Days.Where(d => double.IsFinite(d.SoilWaterFraction)).MinBy(d => d.SoilWaterFraction);
        var caption = driest is null
            ? "Water of the soil and of the vine."
            : $"The soil is driest on {ChartAxis.DayText(driest.Date, isShort: false)}, with "
                + $"{Measure.Number(100 * driest.SoilWaterFraction, 0)} % of its water left; thin line single days.";
        return new ChartSheet(SeasonCharts.Water, "Water", caption, series.Axis, [soil, use])
        {
            Stages = series.Stages,
        };
    }
}
