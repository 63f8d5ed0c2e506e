using CanopySim.Numerics;
using CanopySim.Sky;
using CanopySim.Weather;

namespace CanopySim.Water;

/// <summary>
/// Evapotranspiration of the reference crop, short grass that is well watered: the Penman-Monteith form of Allen, Pereira, Raes
/// &amp; Smith 1998, FAO Irrigation and Drainage Paper 56. It says what the weather demands; what a vineyard uses is another matter.
/// </summary>
public static class ReferenceEvapotranspiration
{
    /// <summary>Albedo of the reference crop, Eq. 38.</summary>
    public const double Albedo = 0.23;

    // Stefan-Boltzmann constant [MJ K⁻⁴ m⁻² d⁻¹] and kelvins at 0 °C as FAO-56 has them in Eq. 39.
    private const double StefanBoltzmannPerDay = 4.903e-9;
    private const double KelvinAtZeroCelsius = 273.16;

    // Below this share of a clear sky's light Eq. 39 would lose nothing to an overcast sky: limit of ASCE-EWRI 2005, from memory.
    private const double LeastRelativeShortwave = 0.3;

    private const double MegajoulesPerJoule = 1e-6;

    /// <summary>
    /// Of a day [mm d⁻¹], Eq. 6: ET0 = [0.408 Δ (Rn − G) + γ 900 / (T + 273) u2 (es − ea)] / [Δ + γ (1 + 0.34 u2)], T the mean of the
    /// extremes, es the mean of saturation at both.
    /// </summary>
    /// <param name="minimumCelsius">Lowest air temperature [°C].</param>
    /// <param name="maximumCelsius">Highest air temperature [°C].</param>
    /// <param name="vaporPressure">Mean vapor pressure ea [kPa].</param>
    /// <param name="netRadiation">Net radiation Rn [MJ m⁻² d⁻¹].</param>
    /// <param name="soilHeatFlux">Heat flux into the soil G [MJ m⁻² d⁻¹], about 0 over a day.</param>
    /// <param name="windSpeed">Mean wind at 2 m [m s⁻¹].</param>
    /// <param name="airPressure">Air pressure [kPa].</param>
    public static double Daily(
        double minimumCelsius, double maximumCelsius, double vaporPressure, double netRadiation, double soilHeatFlux, double windSpeed, double airPressure)
    {
        var mean = (minimumCelsius + maximumCelsius) / 2;
        var saturation = MeanSaturation(minimumCelsius, maximumCelsius);
        return PenmanMonteith(900, mean, saturation - vaporPressure, netRadiation - soilHeatFlux, windSpeed, airPressure);
    }

    /// <summary>
    /// Of an hour [mm h⁻¹], Eq. 53: as by day with 37 in place of 900 and saturation at the hour's mean temperature. G is 0.1 Rn
    /// by day and 0.5 Rn at night, Eqs. 45 and 46.
    /// </summary>
    /// <param name="temperatureCelsius">Mean air temperature [°C].</param>
    /// <param name="vaporPressure">Mean vapor pressure [kPa].</param>
    /// <param name="netRadiation">Net radiation [MJ m⁻² h⁻¹].</param>
    /// <param name="isDay">Whether the sun is up.</param>
    /// <param name="windSpeed">Mean wind at 2 m [m s⁻¹].</param>
    /// <param name="airPressure">Air pressure [kPa].</param>
    public static double Hourly(
        double temperatureCelsius, double vaporPressure, double netRadiation, bool isDay, double windSpeed, double airPressure)
    {
        var deficit = SaturationVaporPressure.At(temperatureCelsius) - vaporPressure;
        return PenmanMonteith(37, temperatureCelsius, deficit, netRadiation - HourlySoilHeatFlux(netRadiation, isDay), windSpeed, airPressure);
    }

    /// <summary>
    /// Of a day of weather [mm d⁻¹], Eq. 6 with G = 0 (Eq. 42), from its extremes, its mean vapor pressure, wind and air pressure and
    /// the sum of its radiation.
    /// </summary>
    public static double OfDay(WeatherDay day, Site site)
    {
        var (minimum, maximum) = (day.MinimumTemperatureCelsius, day.MaximumTemperatureCelsius);
        var vaporPressure = day.Hours.Average(hour => hour.VaporPressure);
        var radiation = day.Hours.Sum(hour => hour.GlobalHorizontalIrradiance) * UnitConversion.SecondsPerHour * MegajoulesPerJoule;
        var clearSky = RadiationFromTemperature.ClearSky(ExtraterrestrialRadiation.Daily(site.Latitude, day.Date.DayOfYear), site.Elevation);
        var net = NetShortwave(radiation) - DailyNetLongwave(minimum, maximum, vaporPressure, radiation / clearSky);
        var (wind, pressure) = (day.Hours.Average(hour => hour.WindSpeed), day.Hours.Average(hour => hour.AirPressure));
        return Daily(minimum, maximum, vaporPressure, net, 0, wind, pressure);
    }

    /// <summary>Saturation vapor pressure of a day es [kPa], the mean of that at both extremes [°C]: Eq. 12.</summary>
    public static double MeanSaturation(double minimumCelsius, double maximumCelsius) =>
        (SaturationVaporPressure.At(minimumCelsius) + SaturationVaporPressure.At(maximumCelsius)) / 2;

    /// <summary>Psychrometric constant γ = 0.665e-3 P [kPa K⁻¹] at an air pressure [kPa]: Eq. 8.</summary>
    public static double PsychrometricConstant(double airPressure) => 0.665e-3 * airPressure;

    /// <summary>Net shortwave radiation Rns = (1 − 0.23) Rs, in the unit of the global radiation: Eq. 38.</summary>
    public static double NetShortwave(double globalRadiation) => (1 - Albedo) * globalRadiation;

    /// <summary>
    /// Net outgoing longwave radiation of a day [MJ m⁻² d⁻¹], Eq. 39: σ (Tmax⁴ + Tmin⁴) / 2 (0.34 − 0.14 √ea) (1.35 Rs/Rso − 0.35).
    /// </summary>
    /// <param name="minimumCelsius">Lowest air temperature [°C].</param>
    /// <param name="maximumCelsius">Highest air temperature [°C].</param>
    /// <param name="vaporPressure">Mean vapor pressure [kPa].</param>
    /// <param name="relativeShortwave">Global radiation over that of a clear sky, Rs/Rso; at most 1 counts.</param>
    public static double DailyNetLongwave(double minimumCelsius, double maximumCelsius, double vaporPressure, double relativeShortwave) =>
        StefanBoltzmannPerDay * (FourthPower(minimumCelsius) + FourthPower(maximumCelsius)) / 2
        * LongwaveFactors(vaporPressure, relativeShortwave);

    /// <summary>
    /// Net outgoing longwave radiation of an hour [MJ m⁻² h⁻¹]: Eq. 39 with the hour's temperature [°C] and σ / 24. At night Rs/Rso is
    /// that of the hours before sunset.
    /// </summary>
    public static double HourlyNetLongwave(double temperatureCelsius, double vaporPressure, double relativeShortwave) =>
        StefanBoltzmannPerDay / UnitConversion.HoursPerDay * FourthPower(temperatureCelsius) * LongwaveFactors(vaporPressure, relativeShortwave);

    /// <summary>Heat flux into the soil in an hour, in the unit of net radiation: Eqs. 45 and 46.</summary>
    public static double HourlySoilHeatFlux(double netRadiation, bool isDay) => (isDay ? 0.1 : 0.5) * netRadiation;

    // 0.408 kg MJ⁻¹ is the inverse of the latent heat of vaporization, 2.45 MJ kg⁻¹.
    private static double PenmanMonteith(
        double numerator, double temperatureCelsius, double deficit, double availableEnergy, double windSpeed, double airPressure)
    {
        var slope = SaturationVaporPressure.SlopeAt(temperatureCelsius);
        var gamma = PsychrometricConstant(airPressure);
        var radiationTerm = 0.408 * slope * availableEnergy;
        var windTerm = gamma * numerator / (temperatureCelsius + 273) * windSpeed * deficit;
        return (radiationTerm + windTerm) / (slope + (gamma * (1 + (0.34 * windSpeed))));
    }

    private static double FourthPower(double celsius) => Math.Pow(celsius + KelvinAtZeroCelsius, 4);

    private static double LongwaveFactors(double vaporPressure, double relativeShortwave) =>
        (0.34 - (0.14 * Math.Sqrt(vaporPressure))) * ((1.35 * Math.Clamp(relativeShortwave, LeastRelativeShortwave, 1)) - 0.35);
}
