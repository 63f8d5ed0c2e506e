using CanopySim.Sky;

namespace CanopySim.Weather;

/// <summary>
/// Global radiation of a day from its temperature range, Rs = k √(Tmax − Tmin) Ra, at most that of a clear sky, Rso = (0.75 +
/// 2e-5 z) Ra: Hargreaves &amp; Samani as in Allen et al. 1998, FAO-56 Eqs. 50 and 37. k [°C^−0.5] is 0.16 inland, 0.19 near a
/// coast; means of some days are trustworthy, single days are not.
/// </summary>
public static class RadiationFromTemperature
{
    /// <summary>Global radiation [MJ m⁻² d⁻¹] from extremes [°C], latitude [°] and height above the sea [m].</summary>
    public static double Daily(
        double minimumCelsius, double maximumCelsius, double factor, double latitudeDegrees, double elevation, int dayOfYear)
    {
        var extraterrestrial = ExtraterrestrialRadiation.Daily(latitudeDegrees, dayOfYear);
        var estimate = factor * Math.Sqrt(Math.Max(maximumCelsius - minimumCelsius, 0)) * extraterrestrial;
        return Math.Min(estimate, ClearSky(extraterrestrial, elevation));
    }

    /// <summary>Radiation of a clear sky, in the unit of the extraterrestrial radiation: FAO-56 Eq. 37.</summary>
    public static double ClearSky(double extraterrestrial, double elevation) => (0.75 + 2e-5 * elevation) * extraterrestrial;
}
