namespace CanopySim.Tests.Light;

/// <summary>
/// A distribution of blade inclinations, from its density over inclination t [rad], drawn by its inverse. Densities of de Wit
/// 1965 and Bunnik 1978, from memory; the ellipsoidal one of Campbell 1990, Agric For Meteorol 49:173-176.
/// </summary>
internal sealed class BladeAngles
{
    private const int Steps = 4000;

    private readonly double[] _upTo = new double[Steps + 1];

    private BladeAngles(Func<double, double> density)
    {
        for (var step = 0; step < Steps; step++)
            _upTo[step + 1] = _upTo[step] + density((step + 0.5) / Steps * Math.PI / 2);
        for (var step = 1; step <= Steps; step++) _upTo[step] /= _upTo[Steps];
    }

    public static BladeAngles Spherical { get; } = new(Math.Sin);

    public static BladeAngles Planophile { get; } = new(t => 1 + Math.Cos(2 * t));

    public static BladeAngles Erectophile { get; } = new(t => 1 - Math.Cos(2 * t));

    public static BladeAngles Plagiophile { get; } = new(t => 1 - Math.Cos(4 * t));

    public static BladeAngles Extremophile { get; } = new(t => 1 + Math.Cos(4 * t));

    public static BladeAngles Uniform { get; } = new(_ => 1);

    public static BladeAngles Vertical { get; } = new(t => t > Math.PI / 2 * (1 - (1.0 / Steps)) ? 1 : 0);

    public static BladeAngles Horizontal { get; } = new(t => t < Math.PI / 2 / Steps ? 1 : 0);

    /// <summary>Normals spread as those of a spheroid whose horizontal axis is x times its vertical one.</summary>
    public static BladeAngles Ellipsoidal(double x) => new(t =>
    {
        var (sine, cosine) = Math.SinCos(t);
        return sine / Math.Pow((cosine * cosine) + (x * x * sine * sine), 2);
    });

    /// <summary>Inclination [rad] below which a share <paramref name="u"/> of the blades lies.</summary>
    public double Inclination(double u)
    {
        var at = Array.BinarySearch(_upTo, u);
        if (at < 0) at = ~at - 1;
        at = Math.Clamp(at, 0, Steps - 1);
        var within = (u - _upTo[at]) / (_upTo[at + 1] - _upTo[at]);
        return (at + Math.Clamp(within, 0, 1)) / Steps * Math.PI / 2;
    }

    /// <summary>
    /// Campbell's extinction coefficient K = √(x² + tan² z) / Λ of the ellipsoidal distribution, Λ exact: 2 for x = 1; x + asin(e) / e,
    /// e = √(1 − x²), below; x + ln((1 + e) / (1 − e)) / (2 e x), e = √(1 − 1/x²), above. Campbell 1986, Agric For Meteorol 36:317-321.
    /// </summary>
    public static double EllipsoidalExtinction(double x, double cosZenith)
    {
        var e = x < 1 ? Math.Sqrt(1 - (x * x)) : Math.Sqrt(1 - (1 / (x * x)));
        var surface = x < 1 ? x + (Math.Asin(e) / e) : x > 1 ? x + (Math.Log((1 + e) / (1 - e)) / (2 * e * x)) : 2;
        return Math.Sqrt((x * x) + (1 / (cosZenith * cosZenith)) - 1) / surface;
    }
}
