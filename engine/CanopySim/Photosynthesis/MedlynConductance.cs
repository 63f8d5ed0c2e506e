namespace CanopySim.Photosynthesis;

/// <summary>
/// Stomatal conductance to water vapor [mol m⁻² s⁻¹]: gs = g0 + 1.6 (1 + g1 / √Ds) A / Cs, A net assimilation [µmol
/// m⁻² s⁻¹], Cs CO₂ [µmol mol⁻¹] and Ds deficit [kPa] at the leaf surface, g1 [kPa^½]. Medlyn et al. 2011, Glob
/// Change Biol 17:2134-2144, doi:10.1111/j.1365-2486.2010.02375.x, Eq. 11. No assimilation leaves the floor g0. Water
/// stress multiplies g1, which falls as the leaf dries (Zhou et al. 2013, Agric For Meteorol 182-183:204-214, from
/// memory): conductance then goes about with the factor, and a factor of 0 leaves g0 + 1.6 A / Cs.
/// </summary>
public static class MedlynConductance
{
    /// <summary>Diffusivity of water vapor over that of CO₂ in still air.</summary>
    public const double VaporPerCo2 = 1.6;

    /// <summary>
    /// Smallest deficit [kPa] put into the root: at saturation or under dew it has no meaning. Common practice, no
    /// source.
    /// </summary>
    public const double DeficitFloor = 0.05;

    /// <summary>Conductance for CO₂ and deficit at the surface.</summary>
    public static double AtSurface(double netAssimilation, double surfaceCo2, double surfaceDeficit, double floor, double slope) =>
        floor + (VaporPerCo2 * (1 + SlopeTerm(surfaceDeficit, slope)) * Math.Max(0, netAssimilation) / surfaceCo2);

    /// <summary>g1 / √D, D not below its floor.</summary>
    public static double SlopeTerm(double deficit, double slope) => slope / Math.Sqrt(Math.Max(DeficitFloor, deficit));

    /// <summary>Ci / Cs where g0 = 0: 1 − 1 / (1 + g1 / √D).</summary>
    public static double IntercellularShare(double deficit, double slope)
    {
        var term = SlopeTerm(deficit, slope);
        return term / (1 + term);
    }

    /// <summary>
    /// Conductance from the leaf-to-air deficit D, of which the surface keeps Ds = D gb / (gb + gs). With y² = (gb +
    /// gs) / gb the formula is the quadratic gb y² − a G y − (gb + g0 + a) = 0, a = 1.6 A / Cs, G = g1 / √D; its
    /// positive root has no cancellation.
    /// </summary>
    /// <param name="assimilationPerCo2">a [mol m⁻² s⁻¹], not below 0.</param>
    /// <param name="slopeTerm">G of the leaf-to-air deficit.</param>
    /// <param name="boundary">Boundary-layer conductance to water vapor gb [mol m⁻² s⁻¹].</param>
    /// <param name="floor">g0 [mol m⁻² s⁻¹].</param>
    /// <param name="derivative">dgs / da.</param>
    public static double BehindBoundaryLayer(
        double assimilationPerCo2, double slopeTerm, double boundary, double floor, out double derivative)
    {
        var linear = assimilationPerCo2 * slopeTerm;
        var constant = boundary + floor + assimilationPerCo2;
        var root = Math.Sqrt((linear * linear) + (4 * boundary * constant));
        var twiceBoundaryY = linear + root;
        var y = twiceBoundaryY / (2 * boundary);
        derivative = twiceBoundaryY * ((slopeTerm * y) + 1) / root;

        // boundary (y² − 1) would cancel where gs is small against gb.
        return floor + assimilationPerCo2 + (linear * y);
    }
}
