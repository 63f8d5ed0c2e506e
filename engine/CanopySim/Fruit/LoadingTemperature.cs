namespace CanopySim.Fruit;

/// <summary>
/// Share of the fastest loading of sugar that a temperature allows: rising from 8 °C, best at 30 °C, falling in a straight line
/// to none at 42 °C. Best and fall: Greer &amp; Weedon 2016, Funct Plant Biol 43:986-1001 (30 °C fastest, linear fall to 40 °C);
/// the lower end is assumed.
/// </summary>
public static class LoadingTemperature
{
    private const double StartCelsius = 8;
    private const double BestCelsius = 30;
    private const double EndCelsius = 42;

    /// <summary>Factor [0 to 1] at an air temperature [°C].</summary>
    public static double Factor(double temperatureCelsius) => temperatureCelsius <= BestCelsius
        ? Math.Clamp((temperatureCelsius - StartCelsius) / (BestCelsius - StartCelsius), 0, 1)
        : Math.Clamp((EndCelsius - temperatureCelsius) / (EndCelsius - BestCelsius), 0, 1);
}
