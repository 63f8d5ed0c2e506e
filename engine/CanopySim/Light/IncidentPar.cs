using CanopySim.Numerics;
using CanopySim.Sky;
using CanopySim.Weather;

namespace CanopySim.Light;

/// <summary>PAR that falls on the horizontal.</summary>
public static class IncidentPar
{
    /// <summary>PAR of an hour [mol m⁻²].</summary>
    public static double MolesPerHour(WeatherHour hour, HourlySun sun) =>
        MolesFromWattHours(BandSplit.HorizontalPar(hour.DirectNormalIrradiance, sun.CosZenith, hour.DiffuseHorizontalIrradiance));

    /// <summary>PAR of a day [mol m⁻²].</summary>
    /// <param name="day">The day's weather.</param>
    /// <param name="suns">The sun of each of its hours.</param>
    public static double MolesPerDay(WeatherDay day, IReadOnlyList<HourlySun> suns)
    {
        var moles = 0.0;
        for (var hour = 0; hour < day.Hours.Count; hour++) moles += MolesPerHour(day.Hours[hour], suns[hour]);
        return moles;
    }

    /// <summary>Photons [mol] of PAR energy [W h].</summary>
    public static double MolesFromWattHours(double wattHours) =>
        wattHours * UnitConversion.SecondsPerHour * UnitConversion.MicromolesPerJouleOfDaylightPar * 1e-6;
}
