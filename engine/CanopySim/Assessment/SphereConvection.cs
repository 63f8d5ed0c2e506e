using CanopySim.Numerics;
using CanopySim.Photosynthesis;

namespace CanopySim.Assessment;

/// <summary>
/// Heat that air takes from a sphere: Nu = 2 + 0.6 Re^½ Pr^⅓ (Ranz &amp; Marshall 1952), times 1.4 as for leaves in
/// turbulent air (Campbell &amp; Norman 1998), or free convection Nu = 2 + 0.454 Ra^¼ (Churchill 1983, for air) where
/// that is more. Conductivity and viscosity of air are straight lines through handbook tables from 0 to 45 °C. All from
/// memory.
/// </summary>
public readonly struct SphereConvection
{
    private const double Prandtl = 0.71;
    private const double Gravity = 9.81;

    private static readonly double RootOfPrandtl = Math.Cbrt(Prandtl);

    private readonly double _perNusselt;
    private readonly double _forced;
    private readonly double _rayleighPerKelvin;

    /// <param name="air">The air.</param>
    /// <param name="diameter">Of the sphere [m].</param>
    public SphereConvection(in BerryAir air, double diameter)
    {
        const double SeaLevelPressure = 101.3;
        var viscosity = (13.3e-6 + (9e-8 * air.Temperature)) * SeaLevelPressure / air.Pressure;
        var wind = Math.Max(LeafBoundaryLayer.WindFloor, air.Wind);
        _perNusselt = (0.0243 + (7e-5 * air.Temperature)) / diameter;
        _forced = LeafBoundaryLayer.Turbulence * (2 + (0.6 * Math.Sqrt(wind * diameter / viscosity) * RootOfPrandtl));
        _rayleighPerKelvin = Prandtl * Gravity * diameter * diameter * diameter
            / (UnitConversion.KelvinFromCelsius(air.Temperature) * viscosity * viscosity);
    }

    /// <summary>Coefficient of heat transfer [W m⁻² K⁻¹] of a sphere so much warmer than the air [K].</summary>
    public double At(double excess) =>
        _perNusselt * Math.Max(_forced, 2 + (0.454 * Math.Sqrt(Math.Sqrt(_rayleighPerKelvin * Math.Max(0, excess)))));
}
