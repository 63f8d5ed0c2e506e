using CanopySim.Sky;

namespace CanopySim.Weather;

/// <summary>
/// Global horizontal irradiance split into direct and diffuse so that global = direct normal × cos zenith + diffuse holds with
/// the hour's own sun. Irradiances are hourly means [W m⁻²].
/// </summary>
public readonly record struct DirectAndDiffuse(double Global, double DirectNormal, double DiffuseHorizontal)
{
    /// <summary>
    /// Diffuse share of the global irradiance at a clearness index kt (global over extraterrestrial, both horizontal) of an hour:
    /// Erbs, Klein &amp; Duffie 1982, Solar Energy 28:293-302.
    /// </summary>
    public static double DiffuseFraction(double clearnessIndex)
    {
        var k = clearnessIndex;
        if (k <= 0.22) return 1 - 0.09 * Math.Max(k, 0);
        return k <= 0.80 ? 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336))) : 0.165;
    }

    /// <summary>Global alone measured: split by <see cref="DiffuseFraction"/>. Nothing when the sun is down.</summary>
    public static DirectAndDiffuse FromGlobal(double global, HourlySun sun)
    {
        if (!sun.IsUp || global <= 0) return default;
        var horizontal = ExtraterrestrialRadiation.Normal(sun.Position.DistanceAu) * sun.LitFraction * sun.CosZenith;
        return FromGlobalAndDirect(global, global * (1 - DiffuseFraction(global / horizontal)) / sun.CosZenith, sun);
    }

    /// <summary>Global and diffuse measured: the rest is direct.</summary>
    public static DirectAndDiffuse FromGlobalAndDiffuse(double global, double diffuse, HourlySun sun) => !sun.IsUp || global <= 0
        ? default
        : FromGlobalAndDirect(global, (global - Math.Clamp(diffuse, 0, global)) / sun.CosZenith, sun);

    /// <summary>
    /// Global and direct measured: the rest is diffuse. Direct light is at most the global's and what clean dry air lets through,
    /// which holds where a low sun makes a quotient of small numbers of it.
    /// </summary>
    public static DirectAndDiffuse FromGlobalAndDirect(double global, double directNormal, HourlySun sun)
    {
        if (!sun.IsUp || global <= 0) return default;
        var direct = Math.Clamp(directNormal, 0, Math.Min(LargestDirect(sun), global / sun.CosZenith));
        return new DirectAndDiffuse(global, direct, Math.Max(global - direct * sun.CosZenith, 0));
    }

    /// <summary>Direct and diffuse measured: the global is their sum.</summary>
    public static DirectAndDiffuse FromDirectAndDiffuse(double directNormal, double diffuse, HourlySun sun)
    {
        if (!sun.IsUp) return default;
        var direct = Math.Clamp(directNormal, 0, LargestDirect(sun));
        return new DirectAndDiffuse(direct * sun.CosZenith + Math.Max(diffuse, 0), direct, Math.Max(diffuse, 0));
    }

    private static double LargestDirect(HourlySun sun) =>
        ExtraterrestrialRadiation.Normal(sun.Position.DistanceAu) * sun.LitFraction
        * AirMass.CleanDryTransmittance(AirMass.KastenYoung(sun.Position.ZenithRadians));
}
