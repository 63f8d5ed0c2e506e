using CanopySim.Assessment;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Sky;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>The fruit zone of a season's canopy on one day, by rods and by a light bar, as one goes into the row with them.</summary>
internal sealed class FruitZoneProbe
{
    // Heights that leaf layers are read at by themselves: the fruit zone of a hedge is 0.4 m, so tenths of a meter.
    private const int Bands = 4;

    private FruitZoneProbe(QuadratReading rods, double barLight) => (Rods, BarLight) = (rods, barLight);

    public QuadratReading Rods { get; }

    /// <summary>PAR of the day on a bar in the middle of the fruit zone that looks up, over that above the canopy [1].</summary>
    public double BarLight { get; }

    /// <summary>
    /// Gaps less those that as many leaves at random places would leave, in standard errors of both. Leaves may be more at one height than
    /// at another: gaps are exp(−leaf layers) at each height, and their mean over heights is more than exp(−mean leaf layers).
    /// </summary>
    public double GapsLessRandom
    {
        get
        {
            var (random, variance) = (0.0, 0.0);
            for (var band = 0; band < Bands; band++)
            {
                var layers = Rods.Between((double)band / Bands, (band + 1.0) / Bands).LeafLayers;
                var share = Math.Exp(-layers.Value) / Bands;
                random += share;
                variance += Math.Pow(share * layers.Error, 2);
            }

            return (Rods.GapFraction - random) / Math.Sqrt(variance + (Rods.Gaps.Error * Rods.Gaps.Error));
        }
    }

    /// <summary>The same where leaves are held to be as many at every height.</summary>
    public double GapsLessEven
    {
        get
        {
            var random = Math.Exp(-Rods.LeafLayerNumber);
            return (Rods.GapFraction - random)
                / Math.Sqrt((Rods.Gaps.Error * Rods.Gaps.Error) + Math.Pow(random * Rods.LeafLayers.Error, 2));
        }
    }

    /// <summary>Grows the season to the evening of a day and probes its canopy in that day's light.</summary>
    public static FruitZoneProbe On(ValidationSeasons seasons, SeasonCase asked, int month, int dayOfMonth)
    {
        var season = seasons.Prepared(asked);
        var day = new DateOnly(season.Year, month, dayOfMonth);
        var scene = new CanopyScene(season.Scenario).Place(seasons.CanopyOn(asked, day), SceneDetail.ForLight).Scene;
        return new FruitZoneProbe(PointQuadrat.Read(scene, season.Scenario), Light(season, scene, day));
    }

    private static double Above(IncidentLight hour) =>
        hour.DiffuseHorizontalPar + (hour.DirectNormalPar * Math.Max(0, hour.SunDirection?.Z ?? 0));

    private static double Light(PreparedSeason season, Scene scene, DateOnly day)
    {
        var (scenario, quality) = (season.Scenario, LightQuality.Draft);
        var sky = new SkyFrame(scenario.Rows.Azimuth, quality.SkyDirectionCount);
        var weather = season.Weather.Days.Single(of => of.Date == day);
        var hours = weather.Hours
            .Select((hour, index) => sky.Of(hour, HourlySun.At(day, index, scenario.Site, season.UtcOffsetHours)))
            .OfType<IncidentLight>().ToList();
        var geometry = LightGeometry.Build(scene, sky.Directions, quality, threads: 1);
        var (solution, radiosity) = geometry.SolveWithRadiosity(hours, scenario.Optics, threads: 1);
        var inside = FruitZoneLight.Read(scenario, solution, radiosity, threads: 1).Sum(hour => hour.Up.Total);
        return inside / hours.Sum(Above);
    }
}
