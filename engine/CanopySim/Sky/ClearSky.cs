namespace CanopySim.Sky;

/// <summary>Light under a cloudless sky. Irradiances [W m⁻²].</summary>
public static class ClearSky
{
    /// <summary>
    /// Global horizontal irradiance from the sun's height alone, 1098 cos z exp(−0.059 / cos z): Haurwitz 1945, J Meteorology
    /// 2:154-166.
    /// </summary>
    public static double Haurwitz(double cosZenith) => cosZenith > 0 ? 1098 * cosZenith * Math.Exp(-0.059 / cosZenith) : 0;

    /// <summary>
    /// Global, direct and diffuse irradiance through air of a turbidity: Ineichen &amp; Perez 2002, Solar Energy 73:151-157,
    /// without its later enhancement of clean air. Linke turbidity is about 2 for very clean, 3 for clear and 5 for hazy air.
    /// </summary>
    /// <param name="cosZenith">Cosine of the sun's zenith angle.</param>
    /// <param name="absoluteAirMass">Air mass times air pressure over that at sea level.</param>
    /// <param name="linkeTurbidity">Linke turbidity.</param>
    /// <param name="elevation">Height above the sea [m].</param>
    /// <param name="extraterrestrialNormal">Normal irradiance above the air [W m⁻²].</param>
    public static (double Global, double DirectNormal, double DiffuseHorizontal) IneichenPerez(
        double cosZenith, double absoluteAirMass, double linkeTurbidity, double elevation, double extraterrestrialNormal)
    {
        if (cosZenith <= 0) return default;
        var fh1 = Math.Exp(-elevation / 8000);
        var fh2 = Math.Exp(-elevation / 1250);
        var cg1 = 5.09e-5 * elevation + 0.868;
        var cg2 = 3.92e-5 * elevation + 0.0387;
        var global = cg1 * extraterrestrialNormal * cosZenith
            * Math.Exp(-cg2 * absoluteAirMass * (fh1 + fh2 * (linkeTurbidity - 1)));
        var direct = Math.Min(
            extraterrestrialNormal * (0.664 + 0.163 / fh1) * Math.Exp(-0.09 * absoluteAirMass * (linkeTurbidity - 1)),
            global * (1 - (0.1 - 0.2 * Math.Exp(-linkeTurbidity)) / (0.1 + 0.882 / fh1)) / cosZenith);
        return (global, direct, global - direct * cosZenith);
    }
}
