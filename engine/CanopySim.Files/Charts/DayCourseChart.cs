using CanopySim.Recording;

namespace CanopySim.Files.Charts;

/// <summary>An hour of a day in the numbers of its course.</summary>
/// <param name="Hour">Hour h covers h:00 to h+1:00 local standard time.</param>
/// <param name="IncidentPpfd">PAR on the horizontal [µmol m⁻² s⁻¹].</param>
/// <param name="AirTemperature">[°C]</param>
/// <param name="LightPerLeafArea">PAR absorbed, mean over the leaf area [µmol m⁻² s⁻¹].</param>
/// <param name="NetAssimilation">Net assimilation, mean over the leaf area [µmol m⁻² s⁻¹].</param>
public readonly record struct DayCourseHour(
    int Hour, double IncidentPpfd, double AirTemperature, double LightPerLeafArea, double NetAssimilation);

/// <summary>How light and assimilation of the canopy went through a day.</summary>
public static class DayCourseChart
{
    private const int FirstHour = 4;

    private const int LastHour = 21;

    /// <summary>The hours with light, means weighted by the area of the blades.</summary>
    public static IReadOnlyList<DayCourseHour> Hours(RecordedHours hours, IReadOnlyList<float> areas)
    {
        var total = 0.0;
        for (var leaf = 0; leaf < hours.LeafCount; leaf++) total += areas[leaf];
        var course = new DayCourseHour[total > 0 ? hours.Count : 0];
        for (var i = 0; i < course.Length; i++)
        {
            var (light, gain) = (0.0, 0.0);
            for (var leaf = 0; leaf < hours.LeafCount; leaf++)
            {
                light += hours.AbsorbedPpfd[hours.IndexOf(i, leaf)] * areas[leaf];
                gain += hours.NetAssimilation[hours.IndexOf(i, leaf)] * areas[leaf];
            }

            course[i] = new DayCourseHour(
                hours.Hours[i], hours.IncidentPpfd[i], hours.AirTemperature[i], light / total, gain / total);
        }

        return course;
    }

    public static ChartSheet Of(DateOnly date, IReadOnlyList<DayCourseHour> course)
    {
        var light = new ChartPanel("light a leaf takes up, µmol of PAR per m² and s, mean over all leaves");
        light.Line(course.Select(hour => new ChartPoint(hour.Hour + 0.5, hour.LightPerLeafArea)), ChartStyle.Line);
        var gain = new ChartPanel("net assimilation, µmol of CO₂ per m² and s, mean over all leaves");
        gain.Line(course.Select(hour => new ChartPoint(hour.Hour + 0.5, hour.NetAssimilation)), ChartStyle.Line);
        var (first, last) = course.Count > 0
            ? (Math.Min(FirstHour, course[0].Hour), Math.Max(LastHour, course[^1].Hour + 1))
            : (FirstHour, LastHour);
        var best = course.Count > 0 ? course.MaxBy(hour => hour.NetAssimilation) : default;
        var caption = course.Count == 0
            ? $"No leaves hung on {ChartAxis.DayText(date, isShort: false)}."
            : $"On {ChartAxis.DayText(date, isShort: false)} the leaves gained most from {best.Hour}:00 to {best.Hour + 1}:00.";
        return new ChartSheet(
            SeasonCharts.DayCourse, $"Light and assimilation on {ChartAxis.DayText(date, isShort: false)}", caption,
            ChartAxis.OfHours(first, last, "hour of the day, standard time"), [light, gain])
        {
            WhenEmpty = "no leaves on this day",
        };
    }
}
