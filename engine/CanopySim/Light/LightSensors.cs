using CanopySim.RayTracing;

namespace CanopySim.Light;

/// <summary>
/// Sensors placed in a geometry. What each of their rays meets is found once; then an hour is a mean over rays of the radiosity
/// of the face met, or of π times the radiance of the sky, and one ray to the sun. A face sends the same from everywhere, so a
/// sensor near a half lit blade reads the blade's mean. A sensor under the ground or in a closed body reads 0.
/// <para>The sky between the geometry's directions is that of the nearest, scaled so that a flat sensor that looks up in the
/// open reads the hour's diffuse irradiance to the last digit.</para>
/// </summary>
public sealed class LightSensors
{
    /// <summary>
    /// Rays of a sensor. PERFORMANCE-AND-ERROR
    /// </summary>
    public const int DefaultRays = 1000;

    private readonly LightGeometry _geometry;
    private readonly SensorView _view;
    private readonly LightSensor[] _sensors;
    private readonly int[][] _targets;
    private readonly int[] _openSky;

    private LightSensors(LightGeometry geometry, IReadOnlyList<LightSensor> sensors, int rays, int threads)
    {
        (_geometry, _view, _sensors) = (geometry, new SensorView(geometry), [.. sensors]);
        foreach (var sensor in _sensors) Check(sensor);
        _openSky = Array.ConvertAll(SensorRays.Flat(new Point3(0, 0, 1), rays), _view.SkyTarget);
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
        var readings = Array.ConvertAll([.. radiosity.Hours], _ => new SensorReading[Count]);
        Workers.Run(threads, readings.Length, () => _view, (view, hour) =>
        {
            var incident = radiosity.Hours[hour];
            var sky = RelativeSky(incident);
            for (var sensor = 0; sensor < Count; sensor++)
            {
                var sun = SunOn(_sensors[sensor], incident);
                var diffuse = Mean(_targets[sensor], target => target < 0 && target != SensorView.Dark ? sky[~target] : 0);
                readings[hour][sensor] = new SensorReading(
                    new SensorIrradiance(sun * incident.DirectNormalPar, diffuse * incident.DiffuseHorizontalPar, Scattered(nir: false)),
                    new SensorIrradiance(sun * incident.DirectNormalNir, diffuse * incident.DiffuseHorizontalNir, Scattered(nir: true)));

                double Scattered(bool nir) => Mean(_targets[sensor], target => target >= 0 ? radiosity.Of(target, hour, nir) : 0);
            }
        });
        return readings;
    }

    private static double Mean(int[] targets, Func<int, double> value)
    {
        var sum = 0.0;
        foreach (var target in targets) sum += value(target);
        return sum / targets.Length;
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

    // π times the radiance of each direction for a diffuse irradiance of 1.
    private double[] RelativeSky(IncidentLight incident)
    {
        var sky = incident.SkyRadiance ?? [.. Enumerable.Repeat(1.0, _geometry.Sky.Directions.Count)];
        var open = Mean(_openSky, target => target == SensorView.Dark ? 0 : sky[~target]);
        return open > 0 ? Array.ConvertAll(sky, value => value / open) : new double[sky.Length];
    }
}
