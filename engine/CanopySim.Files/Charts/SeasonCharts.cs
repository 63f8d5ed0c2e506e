using CanopySim.Results;

namespace CanopySim.Files.Charts;

/// <summary>The charts of a season, in the order in which a report shows them.</summary>
public static class SeasonCharts
{
    /// <summary>Stem of the chart that answers which leaves fed the fruit, the first of all.</summary>
    public const string CarbonByLeafAge = "carbon-by-leaf-age";

    public const string FruitCarbonByLeafAge = "fruit-carbon-by-leaf-age";

    public const string LeafAreaByLeafAge = "leaf-area-by-leaf-age";

    public const string ShootGrowth = "shoot-growth";

    public const string RipeningCapacity = "ripening-capacity";

    public const string Sugar = "sugar";

    public const string LeafAgeCurve = "leaf-age-curve";

    public const string Light = "light";

    public const string Water = "water";

    public const string CanopySheet = "canopy-sheet";

    public const string FruitLight = "fruit-light";

    public const string FruitHeat = "fruit-heat";

    public const string DayCourse = "day-course";

    public const string LeafCourse = "leaf-course";

    /// <summary>Draws them all, on as many threads; every chart is drawn by one.</summary>
    public static IReadOnlyList<ChartPicture> All(
        SeasonResult season, Scenario scenario, Units units = Units.Metric, int threads = 1)
    {
        var sheets = Sheets(season, scenario, units).ToArray();
        var pictures = new ChartPicture[sheets.Length];
        Parallel.For(0, sheets.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, chart =>
            pictures[chart] = sheets[chart].Picture());
        return pictures;
    }

    /// <summary>The same, not drawn yet.</summary>
    public static IEnumerable<ChartSheet> Sheets(SeasonResult season, Scenario scenario, Units units)
    {
        var series = new SeasonSeries(season);
        yield return LeafAgeCharts.Carbon(season, series, units);
        yield return LeafAgeCharts.FruitCarbon(season);
        yield return LeafAgeCharts.LeafArea(season, series, units);
        yield return GrowthCharts.Shoots(season, series, units);
        yield return FruitCharts.RipeningCapacity(season, series, units);
        yield return FruitCharts.Sugar(season, series, scenario.Season.TargetSugar);
        yield return LeafAgeCharts.Curve(season);
        yield return GrowthCharts.Light(season, series);
        yield return GrowthCharts.Water(series, units);
        yield return CanopySheetChart.Of(season, units);
        yield return FruitLightCharts.Light(season);
        yield return FruitLightCharts.Heat(season, scenario, series, units);
    }
}
