namespace CanopySim.Sky;

/// <summary>
/// Directions to the sky, each standing for the same solid angle 2π/count of the upper hemisphere: rings of cells of equal area
/// and nearly square, one direction in the middle of each cell. Every ring is turned against the last by the golden ratio, so
/// that no azimuth is favored. A ring's direction has the mean of its cells' cos zenith, so the cosines add up to π exactly. The
/// vectors have z up, x = sin zenith sin azimuth, y = sin zenith cos azimuth: azimuth is clockwise from y, whatever y is.
/// </summary>
public sealed class SkyDirections
{
    private const double GoldenTurn = 0.618033988749894848;

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

        // Square cells are √(2π/count) wide; a ring ends at the whole number of cells nearest to its share of the hemisphere.
        var rings = Math.Max(1, (int)Math.Round(Math.PI / 2 / Math.Sqrt(2 * Math.PI / count)));
        var index = 0;
        for (var ring = 0; ring < rings; ring++)
        {
            var end = ring + 1 == rings
                ? count
                : (int)Math.Round(count * (1 - Math.Cos(Math.PI / 2 * (ring + 1) / rings)));
            var cells = end - index;
            var cosine = 1 - (index + end) / (2.0 * count);
            var turn = ring * GoldenTurn % 1;
            for (var cell = 0; cell < cells; cell++) directions.Set(index + cell, cosine, 2 * Math.PI * ((cell + turn) / cells));
            index = end;
        }

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
