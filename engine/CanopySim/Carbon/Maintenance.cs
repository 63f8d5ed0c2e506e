using CanopySim.Plants;
using CanopySim.Weather;

namespace CanopySim.Carbon;

/// <summary>
/// Maintenance respiration of everything but leaves: rate at 25 °C × dry mass × Q10^((T − 25) / 10), averaged over the day's
/// hours. Leaves pay through their Rd, once.
/// </summary>
public static class Maintenance
{
    private const double ReferenceTemperatureCelsius = 25;

    /// <summary>Maintenance of a vine on a day [g CH₂O d⁻¹].</summary>
    public static double OfDay(Vine vine, WeatherDay weather, CarbonParameters carbon)
    {
        var warmth = 0.0;
        foreach (var hour in weather.Hours)
            warmth += Math.Pow(carbon.Q10, (hour.AirTemperatureCelsius - ReferenceTemperatureCelsius) / 10) / weather.Hours.Count;
        var stems = 0.0;
        foreach (var shoot in vine.AllShoots()) stems += shoot.StemDryMass;
        var atReference = (carbon.StemMaintenance * stems)
            + (carbon.FruitMaintenance * vine.Crop.StructureDryMass)
            + (carbon.SugarMaintenance * vine.Crop.Sugar)
            + (carbon.PerennialMaintenance * vine.Carbon.PerennialDryMass);
        return atReference * warmth;
    }
}
