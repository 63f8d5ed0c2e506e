using CanopySim.RayTracing;
using CanopySim.Sky;

namespace CanopySim.Light;

/// <summary>
/// Directions that a sensor looks along. Each stands for the same share of what it reads, so a reading is the mean of π times
/// the radiance along them, and light that is the same from everywhere is read exactly.
/// </summary>
internal static class SensorRays
{
    public static Point3[] Of(LightSensor sensor, int count) =>
        sensor.Facing is { } facing ? Flat(facing.Normalized(), count) : Sphere(count);

    /// <summary>
    /// Rays of a flat sensor. Irradiance is π ∫ L d(cos² θ) dφ / 2π: equal shares are even in cos² θ, where even directions are
    /// even in cos θ.
    /// </summary>
    public static Point3[] Flat(Point3 facing, int count)
    {
        var even = SkyDirections.Create(count);
        var aside = Point3.Cross(Math.Abs(facing.Z) < 0.9 ? new Point3(0, 0, 1) : new Point3(0, 1, 0), facing).Normalized();
        var other = Point3.Cross(facing, aside);
        var rays = new Point3[count];
        for (var ray = 0; ray < count; ray++)
        {
            var (along, across) = (Math.Sqrt(even.Z(ray)), Math.Sqrt(1 - even.Z(ray)));
            var (sine, cosine) = Math.SinCos(even.Azimuth(ray));
            rays[ray] = (along * facing) + ((across * sine) * aside) + ((across * cosine) * other);
        }

        return rays;
    }

    // An odd ray more goes up.
    private static Point3[] Sphere(int count)
    {
        var rays = new Point3[count];
        var upper = SkyDirections.Create((count + 1) / 2);
        for (var ray = 0; ray < count; ray++)
        {
            var half = ray / 2;
            rays[ray] = new Point3(upper.X(half), upper.Y(half), ray % 2 == 0 ? upper.Z(half) : -upper.Z(half));
        }

        return rays;
    }
}
