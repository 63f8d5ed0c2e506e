using CanopySim.Numerics;
using CanopySim.RayTracing;

namespace CanopySim.Light;

/// <summary>
/// Directions that a sensor looks along: a spiral that turns by the golden angle from one to the next, without rings that an
/// edge could follow. Each stands for the same share of what the sensor reads, so a reading is the mean of π times the
/// radiance along them, and light that is the same from everywhere is read exactly.
/// </summary>
internal static class SensorRays
{
    public static Point3[] Of(LightSensor sensor, int count) =>
        sensor.Facing is { } facing ? Flat(facing.Normalized(), count) : Sphere(count);

    /// <summary>Rays of a flat sensor: even in cos² θ, as ∫ L cos θ dω = ½ ∫ L d(cos² θ) dφ.</summary>
    public static Point3[] Flat(Point3 facing, int count)
    {
        var aside = Point3.Cross(Math.Abs(facing.Z) < 0.9 ? new Point3(0, 0, 1) : new Point3(0, 1, 0), facing).Normalized();
        var other = Point3.Cross(facing, aside);
        var rays = new Point3[count];
        for (var ray = 0; ray < count; ray++)
        {
            var share = (ray + 0.5) / count;
            var (sine, cosine) = Math.SinCos(-ray * GoldenAngle.Radians);
            rays[ray] = (Math.Sqrt(1 - share) * facing) + (Math.Sqrt(share) * ((sine * aside) + (cosine * other)));
        }

        return rays;
    }

    // Even in cos θ over all directions.
    private static Point3[] Sphere(int count)
    {
        var rays = new Point3[count];
        for (var ray = 0; ray < count; ray++)
        {
            var height = 1 - (((2 * ray) + 1.0) / count);
            var radius = Math.Sqrt(1 - (height * height));
            var (sine, cosine) = Math.SinCos(-ray * GoldenAngle.Radians);
            rays[ray] = new Point3(radius * sine, radius * cosine, height);
        }

        return rays;
    }
}
