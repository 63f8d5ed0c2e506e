namespace CanopySim.Numerics;

/// <summary>Conversions between the engine's units, each constant named X-per-Y.</summary>
public static class UnitConversion
{
    public const double KelvinAtZeroCelsius = 273.15;

    public const double SecondsPerHour = 3600;

    public const double HoursPerDay = 24;

    public const double SquareCentimetersPerSquareMeter = 1e4;

    /// <summary>Photons in the PAR of daylight [µmol J⁻¹]. Thimijan &amp; Heins 1983, from memory.</summary>
    public const double MicromolesPerJouleOfDaylightPar = 4.57;

    /// <summary>Grams of CO₂ per µmol.</summary>
    public const double GramsCo2PerMicromole = 44.0095e-6;

    /// <summary>Grams of carbohydrate (CH₂O) per gram of CO₂: 30.026 / 44.0095.</summary>
    public const double GramsCarbohydratePerGramCo2 = 30.026 / 44.0095;

    /// <summary>Grams of carbon per gram of carbohydrate (CH₂O): 12.011 / 30.026.</summary>
    public const double GramsCarbonPerGramCarbohydrate = 12.011 / 30.026;

    public const double GramsWaterPerMole = 18.01528;

    public static double RadiansFromDegrees(double degrees) => degrees * (Math.PI / 180);

    public static double DegreesFromRadians(double radians) => radians * (180 / Math.PI);

    public static double KelvinFromCelsius(double celsius) => celsius + KelvinAtZeroCelsius;
}
