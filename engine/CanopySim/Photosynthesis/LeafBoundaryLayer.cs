namespace CanopySim.Photosynthesis;

/// <summary>
/// Conductances of the air at one side of a blade [mol m⁻² s⁻¹]: g = 1.4 c √(u / d), u wind at the leaf [m s⁻¹], d =
/// 0.72 width [m], c 0.135 for heat, 0.147 for water vapor, 0.110 for CO₂; 1.4 for turbulent air. Campbell &amp;
/// Norman 1998, An Introduction to Environmental Biophysics, 2nd ed., Table 7.6, Section 7.9 and 14.1, from memory.
/// Heat leaves by both sides, gases by the lower one (hypostomatous).
/// </summary>
/// <param name="Heat">To heat, one side.</param>
/// <param name="Vapor">To water vapor.</param>
/// <param name="Co2">To CO₂.</param>
public readonly record struct LeafBoundaryLayer(double Heat, double Vapor, double Co2)
{
    /// <summary>
    /// Smallest wind at a leaf [m s⁻¹]. Assumed: an hour's mean is never still air, and free convection of a blade 10
    /// K above the air, 0.05 (ΔT / d)^¼ on its better side, is that of 0.04 to 0.07 m s⁻¹ (Campbell &amp; Norman
    /// 1998, Table 7.6, from memory).
    /// </summary>
    public const double WindFloor = 0.1;

    /// <summary>c of heat, vapor and CO₂.</summary>
    internal const double HeatFactor = 0.135;

    internal const double VaporFactor = 0.147;

    internal const double Co2Factor = 0.110;

    /// <summary>Of air in turbulence.</summary>
    internal const double Turbulence = 1.4;

    /// <summary>d over the width of a blade.</summary>
    internal const double LengthPerWidth = 0.72;

    public static LeafBoundaryLayer At(double windSpeed, double leafWidth)
    {
        var root = Turbulence * Math.Sqrt(Math.Max(WindFloor, windSpeed) / (LengthPerWidth * leafWidth));
        return new(HeatFactor * root, VaporFactor * root, Co2Factor * root);
    }
}
