using System.Numerics;

namespace CanopySim.Tests.Light;

/// <summary>
/// Directions of equal solid angle for the tests: a Fibonacci spiral over the hemisphere. Heights
/// are evenly spaced, so each point stands for 2π / count.
/// </summary>
internal static class SkyRings
{
    public static Vector3[] Spiral(int count)
    {
        var directions = new Vector3[count];
        for (var index = 0; index < count; index++)
        {
            var height = (index + 0.5) / count;
            var radius = Math.Sqrt(1 - (height * height));
            var angle = index * Math.PI * (3 - Math.Sqrt(5));
            directions[index] = new Vector3((float)(radius * Math.Cos(angle)), (float)(radius * Math.Sin(angle)), (float)height);
        }

        return directions;
    }

    /// <summary>Unit vector by zenith angle and by azimuth from x (across the row) towards y, in degrees.</summary>
    public static Vector3 Direction(double zenith, double azimuth)
    {
        var (sine, cosine) = Math.SinCos(zenith * Math.PI / 180);
        var (sineAzimuth, cosineAzimuth) = Math.SinCos(azimuth * Math.PI / 180);
        return new Vector3((float)(sine * cosineAzimuth), (float)(sine * sineAzimuth), (float)cosine);
    }
}
