using CanopySim.Geometry;
using CanopySim.Plants;
using CanopySim.Sky;
using CanopySim.Weather;

namespace CanopySim.Light;

/// <summary>The light of one day on a placed canopy.</summary>
/// <param name="Canopy">The canopy when its geometry was made.</param>
/// <param name="Hours">Hours of the day with light, in order; the solution's hours are these.</param>
/// <param name="Incident">What fell on the block in each of them.</param>
/// <param name="Solution">Light on every surface.</param>
/// <param name="IncidentParMoles">PAR of the day on the horizontal [mol m⁻²].</param>
public sealed record LightOfDay(
    PlacedCanopy Canopy, IReadOnlyList<int> Hours, IReadOnlyList<IncidentLight> Incident, LightSolution Solution, double IncidentParMoles);

/// <summary>
/// Lights the canopy day by day. Who sees whom is found anew when so much leaf has grown or fallen as the quality allows, or
/// when work or frost changed the canopy; sun, sky and scattering are solved every day. Clusters and wood stay as thick as they were when
/// the leaves last changed.
/// </summary>
public sealed class CanopyLight(Scenario scenario, Quality quality, double utcOffsetHours, int threads)
{
    private readonly LightQuality _quality = LightQuality.For(quality);
    private readonly CanopyScene _scene = new(scenario);
    private readonly SkyFrame _sky = new(scenario.Rows.Azimuth, LightQuality.For(quality).SkyDirectionCount);

    private readonly double _leastArea = LightQuality.For(quality).LeastLeafAreaIndex * CanopyScene.CellOf(scenario).GroundArea;
    private readonly LinkWorkers _workers = new();

    private LightGeometry? _geometry;
    private ComposedLight? _composed;
    private PlacedCanopy? _placed;
    private PlacedArea? _area;

    public int SkyDirectionCount => _quality.SkyDirectionCount;

    private SceneDetail Detail => quality is Quality.Draft or Quality.Rough ? SceneDetail.ForLight : SceneDetail.Drawn;

    /// <summary>Places the canopy, if its geometry is too old or was changed, and returns it as light will see it.</summary>
    public PlacedCanopy Place(Canopy canopy, bool changed)
    {
        if (_placed is null || _area is null || changed || _area.ShareChanged(canopy, _leastArea) > _quality.AreaDrift)
        {
            _placed = _scene.Place(canopy, Detail);
            _geometry = LightGeometry.Build(_placed.Scene, _sky.Directions, _quality, threads, _workers);
            _composed = _quality.IsComposed ? new ComposedLight(_geometry, scenario.Optics, threads) : null;
            _area = new PlacedArea(_placed, canopy);
        }

        return _placed;
    }

    /// <summary>The sun of each hour of a day.</summary>
    public HourlySun[] Suns(WeatherDay day)
    {
        var suns = new HourlySun[day.Hours.Count];
        Workers.Run(threads, suns.Length, () => true, (_, hour) => suns[hour] = HourlySun.At(day.Date, hour, scenario.Site, utcOffsetHours));
        return suns;
    }

    /// <summary>Solves a day's light on the canopy as placed.</summary>
    public LightOfDay Solve(WeatherDay day) => Solve(day, Suns(day));

    /// <summary>The same with the suns of its hours at hand.</summary>
    public LightOfDay Solve(WeatherDay day, IReadOnlyList<HourlySun> suns)
    {
        if (_geometry is null || _placed is null) throw new InvalidOperationException("the canopy must be placed before it is lit");
        var lights = new IncidentLight?[day.Hours.Count];
        Workers.Run(threads, lights.Length, () => true, (_, hour) => lights[hour] = _sky.Of(day.Hours[hour], suns[hour]));
        var hours = new List<int>();
        var incident = new List<IncidentLight>();
        var moles = 0.0;
        for (var hour = 0; hour < day.Hours.Count; hour++)
        {
            if (lights[hour] is not { } light) continue;
            hours.Add(hour);
            incident.Add(light);
            moles += IncidentPar.MolesPerHour(day.Hours[hour], suns[hour]);
        }

        var solution = _composed?.Solve(incident) ?? _geometry.Solve(incident, scenario.Optics, threads);
        return new LightOfDay(_placed, hours, incident, solution, moles);
    }
}
