using CanopySim.Numerics;

namespace CanopySim.Photosynthesis;

/// <summary>A leaf, or its sunlit or shaded part, as gas exchange sees it. Areas are one-sided.</summary>
/// <param name="AbsorbedPpfd">PAR photons that the blade absorbs [µmol m⁻² s⁻¹].</param>
/// <param name="AbsorbedNir">Near infrared that it absorbs [W m⁻²].</param>
/// <param name="CapacityFactor">Multiplies Vcmax and Jmax: age efficiency × light acclimation × sink.</param>
/// <param name="RespirationFactor">Multiplies day respiration.</param>
/// <param name="Width">Width of the blade [m].</param>
/// <param name="WaterStressFactor">Multiplies the slope g1 of conductance: 1 without stress, 0 when dry.</param>
public readonly record struct LeafState(
    double AbsorbedPpfd,
    double AbsorbedNir,
    double CapacityFactor,
    double RespirationFactor,
    double Width,
    double WaterStressFactor)
{
    /// <summary>Absorbed PAR and near infrared [W m⁻²]; PAR as that of daylight.</summary>
    public double AbsorbedShortwave => (AbsorbedPpfd / UnitConversion.MicromolesPerJouleOfDaylightPar) + AbsorbedNir;
}
