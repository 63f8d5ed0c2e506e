using CanopySim.Numerics;

namespace CanopySim.Sky;

/// <summary>
/// Directions to the sky, each standing for the same solid angle 2π/count of the upper hemisphere: a Fibonacci spiral, cos zenith
/// in even steps from the zenith down and each azimuth a golden angle on from the last.
/// No two share a height: in rings they did, and what a canopy catches, concave in the cosine, came out 0.5 % too high with 145.
/// The cosines add up to π exactly. The vectors have z up, x = sin zenith sin azimuth, y = sin zenith cos azimuth: azimuth is
/// clockwise from y, whatever y is.
/// </summary>
public sealed class SkyDirections
{
    private readonly double[] _zenith, _azimuth, _x, _y, _z;

    private SkyDirections(int count)
    {
        _zenith = new double[count];
        _azimuth = new double[count];
        _x = new double[count];
        _y = new double[count];
        _z = new double[count];
    }

    public int Count => _zenith.Length;

    /// <summary>Solid angle of each direction [sr].</summary>
    public double SolidAngle => 2 * Math.PI / Count;

    public static SkyDirections Create(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var directions = new SkyDirections(count);

        for (var index = 0; index < count; index++)
            directions.Set(index, 1 - ((index + 0.5) / count), index * GoldenAngle.Radians % (2 * Math.PI));
        return directions;
    }

    /// <summary>Zenith angle [rad].</summary>
    public double Zenith(int index) => _zenith[index];

    /// <summary>Azimuth clockwise from y [rad], 0 to 2π.</summary>
    public double Azimuth(int index) => _azimuth[index];

    public double X(int index) => _x[index];

    public double Y(int index) => _y[index];

    public double Z(int index) => _z[index];

    /// <summary>
    /// Share of a sky's irradiance on the horizontal that comes from each direction; the shares sum to 1.
    /// </summary>
    /// <param name="sky">The sky's radiance.</param>
    /// <param name="azimuthOfY">Azimuth [rad] of the y axis in the frame of the sky's sun (the row azimuth).</param>
    public double[] IrradianceShares(ISkyRadiance sky, double azimuthOfY = 0)
    {
        var shares = new double[Count];
        var sum = 0.0;
        for (var index = 0; index < Count; index++)
        {
            shares[index] = sky.RelativeRadiance(_zenith[index], _azimuth[index] + azimuthOfY) * _z[index];
            sum += shares[index];
        }

        for (var index = 0; index < Count; index++) shares[index] /= sum;
        return shares;
    }

    private void Set(int index, double cosine, double azimuth)
    {
        var sine = Math.Sqrt(1 - cosine * cosine);
        _zenith[index] = Math.Atan2(sine, cosine);
        _azimuth[index] = azimuth;
        _x[index] = sine * Math.Sin(azimuth);
        _y[index] = sine * Math.Cos(azimuth);
        _z[index] = cosine;
    }
}
