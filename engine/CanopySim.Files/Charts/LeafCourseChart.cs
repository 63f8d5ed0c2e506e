namespace CanopySim.Files.Charts;

/// <summary>A day in the life of a leaf.</summary>
/// <param name="Date">The day.</param>
/// <param name="AreaCm2">Area [cm²].</param>
/// <param name="Efficiency">Efficiency of its age [0 to 1].</param>
/// <param name="NetAssimilationGCo2">Net assimilation of the day, night included [g CO₂].</param>
public readonly record struct LeafCourseDay(DateOnly Date, double AreaCm2, double Efficiency,
    double NetAssimilationGCo2);

/// <summary>What one leaf was and gave, from its first day to its last.</summary>
public static class LeafCourseChart
{
    private const double MilligramsPerGram = 1000;

    /// <param name="course">Its days in order.</param>
    /// <param name="from">First day of the season.</param>
    /// <param name="to">Last day of the season.</param>
    /// <param name="stages">Stages to mark.</param>
    public static ChartSheet Of(
        IReadOnlyList<LeafCourseDay> course, DateOnly from, DateOnly to, IReadOnlyList<StageMark> stages)
    {
        var efficiency = new ChartPanel("efficiency of its age, % of its own best") { Ceiling = 100 };
        efficiency.Line(course.Select(day => new ChartPoint(ChartAxis.PlaceOf(day.Date), 100 * day.Efficiency)),
            ChartStyle.Line);
        var gain = new ChartPanel("net assimilation of the leaf, mg of CO₂ a day");
        var points = course
            .Select(day => new ChartPoint(ChartAxis.PlaceOf(day.Date), MilligramsPerGram * day.NetAssimilationGCo2))
                .ToList();
        gain.Line(points, ChartStyle.FaintLine, isThin: true);
        gain.Line(SeasonSeries.WeekMean(points), ChartStyle.Line);
        return new ChartSheet(
            SeasonCharts.LeafCourse, "This leaf through the season",
            "Efficiency follows age alone; what the leaf gains follows its light too. Thin line single days.",
            ChartAxis.OfDates(from, to), [efficiency, gain])
        {
            Stages = stages,
            WhenEmpty = "no such leaf",
        };
    }
}
