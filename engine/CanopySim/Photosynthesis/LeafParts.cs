using CanopySim.Light;
using CanopySim.Numerics;

namespace CanopySim.Photosynthesis;

/// <summary>
/// A blade's sunlit and shaded part in an hour. Diffuse and scattered light is spread evenly over both; direct light falls on
/// the sunlit part alone. PAR [µmol m⁻² s⁻¹] and NIR [W m⁻²] are absorbed, per one-sided area.
/// </summary>
public readonly record struct LeafParts(double SunlitShare, double SunlitPpfd, double ShadedPpfd, double SunlitNir, double ShadedNir)
{
    // A sliver of sun smaller than this is a pixel or less: its light is spread over the whole blade.
    private const double LeastSunlitShare = 1e-3;

    public static LeafParts Of(LightOfDay light, int hour, int surface, double area, Optics optics)
    {
        var at = light.Solution.IndexOf(hour, surface);
        var direct = light.Solution.AbsorbedParDirect[at];
        var par = light.Solution.AbsorbedPar[at] / area;
        var nir = light.Solution.AbsorbedNir[at] / area;
        var share = light.Solution.SunlitShare[at];
        var incident = light.Incident[hour];
        if (share < LeastSunlitShare || direct <= 0 || incident.DirectNormalPar <= 0)
            return new LeafParts(0, 0, par * UnitConversion.MicromolesPerJouleOfDaylightPar, 0, nir);

        // Sunlit geometry is the same in both bands: direct NIR follows from direct PAR.
        var parAbsorptance = 1 - optics.LeafParReflectance - optics.LeafParTransmittance;
        var nirAbsorptance = 1 - optics.LeafNirReflectance - optics.LeafNirTransmittance;
        var directPar = direct / area;
        var directNir = parAbsorptance > 0
            ? Math.Min(nir, directPar * nirAbsorptance / parAbsorptance * incident.DirectNormalNir / incident.DirectNormalPar)
            : 0;
        var shadedPar = Math.Max(0, par - directPar);
        var shadedNir = nir - directNir;
        return new LeafParts(
            share,
            (shadedPar + (directPar / share)) * UnitConversion.MicromolesPerJouleOfDaylightPar,
            shadedPar * UnitConversion.MicromolesPerJouleOfDaylightPar,
            shadedNir + (directNir / share),
            shadedNir);
    }
}
