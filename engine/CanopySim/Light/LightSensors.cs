using CanopySim.RayTracing;

namespace CanopySim.Light;

/// <summary>
/// Sensors placed in a geometry. What each of their rays meets is found once; then an hour is a mean over rays of the radiosity
/// of the face met, or of π times the radiance of the sky, and one ray to the sun. A face sends the same from everywhere, so a
/// sensor near a half lit blade reads the blade's mean. A sensor under the ground or in a closed body reads 0.
/// <para>The sky is scaled so that a flat sensor that looks up in the open reads the hour's diffuse irradiance to the last
/// digit.</para>
/// </summary>
public sealed class LightSensors
{
    /// <summary>
    /// Rays of a sensor: under one blade they tell the open sky to 0.2 % of it (root mean square), in a clear sky a tilted sensor's
    /// share to 0.3 %. The sun is there or not: over a canopy with sun flecks it takes many sensors to tell their share.
    /// </summary>
    public const int DefaultRays = 1000;

    private readonly LightGeometry _geometry;
    private readonly SensorView _view;
    private readonly LightSensor[] _sensors;
    private readonly int[][] _targets;
    private readonly int _rays;

    private LightSensors(LightGeometry geometry, IReadOnlyList<LightSensor> sensors, int rays, int threads)
    {
        (_geometry, _view, _sensors, _rays) = (geometry, new SensorView(geometry), [.. sensors], rays);
        foreach (var sensor in _sensors) Check(sensor);
        _targets = new int[_sensors.Length][];
        Workers.Run(threads, _sensors.Length, () => _view, (view, index) =>
            _targets[index] = view.Targets(_sensors[index].Point, SensorRays.Of(_sensors[index], rays)));
    }

    public int Count => _sensors.Length;

    /// <param name="geometry">The scene, as light sees it.</param>
    /// <param name="sensors">In any order; each is read for itself.</param>
    /// <param name="threads">Workers; the result is the same for any number.</param>
    /// <param name="rays">Rays of each sensor.</param>
    public static LightSensors Place(LightGeometry geometry, IReadOnlyList<LightSensor> sensors, int threads, int rays = DefaultRays)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rays, 1);
        return new LightSensors(geometry, sensors, rays, threads);
    }

    /// <summary>What every sensor reads in every hour: by hour, then by sensor.</summary>
    /// <param name="radiosity">Of the same geometry, from <see cref="LightGeometry.SolveWithRadiosity"/>.</param>
    /// <param name="threads">Workers; the result is the same for any number.</param>
    public SensorReading[][] Read(FaceRadiosity radiosity, int threads)
    {
        if (radiosity.Geometry != _geometry) throw new ArgumentException("radiosity of another geometry", nameof(radiosity));
        var skies = Array.ConvertAll([.. radiosity.Hours], SkyOf);
        var readings = Array.ConvertAll(skies, _ => new SensorReading[Count]);
        Workers.Run(threads, Count, () => _view, (view, index) =>
        {
            var (sensor, targets) = (_sensors[index], _targets[index]);
            var rays = SensorRays.Of(sensor, _rays);
            for (var hour = 0; hour < skies.Length; hour++)
            {
                var (incident, sun) = (radiosity.Hours[hour], SunOn(sensor, radiosity.Hours[hour]));
                var (diffuse, par, nir) = (0.0, 0.0, 0.0);
                for (var ray = 0; ray < rays.Length; ray++)
                {
                    if (targets[ray] >= 0)
                    {
                        par += radiosity.Of(targets[ray], hour, nir: false);
                        nir += radiosity.Of(targets[ray], hour, nir: true);
                    }
                    else if (targets[ray] != SensorView.Dark)
                    {
                        diffuse += skies[hour](rays[ray], ~targets[ray]);
                    }
                }

                diffuse /= rays.Length;
                readings[hour][index] = new SensorReading(
                    new SensorIrradiance(sun * incident.DirectNormalPar, diffuse * incident.DiffuseHorizontalPar, par / rays.Length),
                    new SensorIrradiance(sun * incident.DirectNormalNir, diffuse * incident.DiffuseHorizontalNir, nir / rays.Length));
            }
        });
        return readings;
    }

    private static void Check(LightSensor sensor)
    {
        var facing = sensor.Facing ?? new Point3(0, 0, 1);
        if (!double.IsFinite(sensor.Point.X + sensor.Point.Y + sensor.Point.Z))
            throw new ArgumentException($"a sensor at {sensor.Point}", nameof(sensor));
        if (!(Point3.Dot(facing, facing) > 0 && double.IsFinite(Point3.Dot(facing, facing))))
            throw new ArgumentException($"a sensor that faces {facing}", nameof(sensor));
    }

    // Irradiance per normal irradiance. A sphere catches the light of its cross section, a quarter of its surface.
    private double SunOn(LightSensor sensor, IncidentLight incident)
    {
        if (incident.SunDirection is not { } sun) return 0;
        var share = sensor.Facing is { } facing ? Point3.Dot(facing.Normalized(), Point3.From(sun)) : 0.25;
        return share > 0 && _view.SeesSun(sensor.Point, sun) ? share : 0;
    }

    // π times the radiance for a diffuse irradiance of 1, by ray and nearest direction of the geometry.
    private Func<Point3, int, double> SkyOf(IncidentLight incident)
    {
        Func<Point3, int, double> relative = incident switch
        {
            { SkyRadianceTowards: { } towards } => (ray, _) => towards(ray),
            { SkyRadiance: { } radiances } => (_, nearest) => radiances[nearest],
            _ => (_, _) => 1,
        };
        var rays = SensorRays.Flat(new Point3(0, 0, 1), _rays);
        var open = rays.Average(ray => relative(ray, ~_view.SkyTarget(ray)));
        return open > 0 ? (ray, nearest) => relative(ray, nearest) / open : (_, _) => 0;
    }
}
