using CanopySim.Numerics;
using CanopySim.Weather;

namespace CanopySim.Photosynthesis;

/// <summary>
/// Energy of a blade [W m⁻² of one-sided area]: R + ε (Lsky + σ Ta⁴) − 2 ε σ Tl⁴ − 2 gH cp (Tl − Ta) − λ gv (e°(Tl) −
/// ea) / P = 0, R absorbed shortwave. Each of the two sides sees half sky, half surroundings at air temperature.
/// Latent heat keeps its sign: dew warms. Energy bound by assimilation (under 2 % of R) is left out. Form: Campbell
/// &amp; Norman 1998, Eq. 14.1, longwave not linearized.
/// </summary>
public static class LeafEnergyBalance
{
    /// <summary>σ [W m⁻² K⁻⁴].</summary>
    public const double StefanBoltzmann = 5.670374419e-8;

    /// <summary>Specific heat of air cp [J mol⁻¹ K⁻¹]. Campbell &amp; Norman 1998.</summary>
    public const double SpecificHeat = 29.3;

    /// <summary>Latent heat of evaporation λ [J mol⁻¹]. Campbell &amp; Norman 1998: 44 kJ mol⁻¹ near 25 °C.</summary>
    public const double LatentHeat = 44_000;

    /// <summary>
    /// Longwave of a clear sky [W m⁻²]: 1.72 (ea / Ta)^(1/7) σ Ta⁴, ea vapor pressure [kPa], Ta [K]. Brutsaert 1975,
    /// Water Resour Res 11:742-744, doi:10.1029/WR011i005p00742.
    /// </summary>
    public static double SkyLongwave(double airTemperatureCelsius, double vaporPressure)
    {
        var kelvin = UnitConversion.KelvinFromCelsius(airTemperatureCelsius);
        return 1.72 * Math.Pow(vaporPressure / kelvin, 1.0 / 7) * BlackBody(kelvin);
    }

    /// <summary>σ T⁴ [W m⁻²] at a temperature [K].</summary>
    public static double BlackBody(double kelvin)
    {
        var square = kelvin * kelvin;
        return StefanBoltzmann * square * square;
    }

    /// <summary>Longwave that both sides take up [W m⁻²].</summary>
    public static double AbsorbedLongwave(double airTemperatureCelsius, double vaporPressure, double emissivity) =>
        emissivity * (SkyLongwave(airTemperatureCelsius, vaporPressure)
            + BlackBody(UnitConversion.KelvinFromCelsius(airTemperatureCelsius)));

    /// <summary>Stomata and boundary layer of the lower side in series [mol m⁻² s⁻¹].</summary>
    public static double VaporConductance(double stomatal, double boundary) => stomatal * boundary / (stomatal + boundary);

    /// <summary>
    /// What is left of the balance [W m⁻²] at a leaf temperature (positive: the leaf warms), and how fast it falls
    /// per kelvin of leaf temperature at fixed conductances.
    /// </summary>
    public static double Residual(
        in LeafHeat heat, double leafTemperatureCelsius, double saturation, double vaporConductance, out double decline)
    {
        var kelvin = UnitConversion.KelvinFromCelsius(leafTemperatureCelsius);
        var emission = 2 * heat.Emissivity * BlackBody(kelvin);
        var sensible = 2 * SpecificHeat * heat.HeatConductance;
        var latent = LatentHeat * vaporConductance / heat.AirPressure;
        var denominator = leafTemperatureCelsius + 237.3;
        decline = (4 * emission / kelvin) + sensible + (latent * 4098 * saturation / (denominator * denominator));
        return heat.Absorbed - emission - (sensible * (leafTemperatureCelsius - heat.AirTemperatureCelsius))
            - (latent * (saturation - heat.VaporPressure));
    }

    /// <summary>
    /// Leaf temperature [°C] for a given conductance to vapor: Newton on a falling concave function, from any first
    /// temperature.
    /// </summary>
    public static double LeafTemperature(in LeafHeat heat, double vaporConductance, double firstTemperature)
    {
        var temperature = firstTemperature;
        for (var step = 0; step < 50; step++)
        {
            var residual = Residual(heat, temperature, SaturationVaporPressure.At(temperature), vaporConductance, out var decline);
            var change = residual / decline;
            temperature += change;
            if (Math.Abs(change) < 1e-5) break;
        }

        return temperature;
    }
}

/// <summary>What the energy balance of a blade needs besides its temperature and its stomata.</summary>
/// <param name="Absorbed">Absorbed shortwave and longwave [W m⁻² of one-sided area].</param>
/// <param name="Emissivity">Emissivity of the blade.</param>
/// <param name="HeatConductance">Boundary-layer conductance to heat of one side [mol m⁻² s⁻¹].</param>
/// <param name="AirTemperatureCelsius">Air temperature [°C].</param>
/// <param name="VaporPressure">Vapor pressure of the air [kPa].</param>
/// <param name="AirPressure">Air pressure [kPa].</param>
public readonly record struct LeafHeat(
    double Absorbed,
    double Emissivity,
    double HeatConductance,
    double AirTemperatureCelsius,
    double VaporPressure,
    double AirPressure);
