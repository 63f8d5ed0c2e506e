namespace CanopySim.Light;

/// <summary>
/// Share of PAR in solar irradiance; the rest counts as NIR. 0.45 of direct, 0.50 of diffuse light: 0.45 to 0.47 under clear
/// and up to 0.5 and more under overcast skies, Meek et al. 1984, Monteith &amp; Unsworth, from memory.
/// </summary>
public static class BandSplit
{
    public const double ParShareOfDirect = 0.45;
    public const double ParShareOfDiffuse = 0.50;

    /// <summary>PAR on the horizontal [W m⁻²] from direct normal and diffuse irradiance [W m⁻²] at a sun's cosine of zenith.</summary>
    public static double HorizontalPar(double directNormal, double cosZenith, double diffuseHorizontal) =>
        (ParShareOfDirect * directNormal * cosZenith) + (ParShareOfDiffuse * diffuseHorizontal);
}
