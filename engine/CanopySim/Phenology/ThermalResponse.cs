using CanopySim.Growth;

namespace CanopySim.Phenology;

/// <summary>
/// How development answers temperature, hour by hour: nothing below the base, one thermal unit a degree up to the optimum,
/// flat to the decline, then falling to nothing at the ceiling. A day's thermal units are the mean over its hours [°C d].
/// Shape: base from Buttrose &amp; Hale 1973 (Am J Enol Vitic 24:14-16), whose three regimes no straight line joins.
/// </summary>
public static class ThermalResponse
{
    public const string Method = "mean over the hours of max(0, min(T, optimum) - base), falling to 0 from decline to ceiling";

    /// <summary>Rate of development [°C] at an air temperature [°C].</summary>
    public static double Rate(double temperatureCelsius, GrowthParameters growth)
    {
        if (temperatureCelsius <= growth.BaseTemperature || temperatureCelsius >= growth.CeilingTemperature) return 0;
        var plateau = growth.OptimumTemperature - growth.BaseTemperature;
        if (temperatureCelsius <= growth.OptimumTemperature) return temperatureCelsius - growth.BaseTemperature;
        if (temperatureCelsius <= growth.DeclineTemperature) return plateau;
        return plateau * (growth.CeilingTemperature - temperatureCelsius) / (growth.CeilingTemperature - growth.DeclineTemperature);
    }
}
