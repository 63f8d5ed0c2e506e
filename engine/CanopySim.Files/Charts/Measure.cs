using System.Globalization;

namespace CanopySim.Files.Charts;

/// <summary>
/// A kind of quantity in both systems of units: what the engine holds is metric, a reader sees what he chose.
/// </summary>
/// <param name="Metric">The engine's unit, as people write it.</param>
/// <param name="Us">The unit of the United States for the same.</param>
/// <param name="UsPerMetric">US units in one metric unit.</param>
public sealed record Measure(string Metric, string Us, double UsPerMetric)
{
    private const double CentimetersPerInch = 2.54;

    private const double MetersPerFoot = 0.3048;

    private const double SquareMetersPerSquareFoot = MetersPerFoot * MetersPerFoot;

    private const double KilogramsPerPound = 0.45359237;

    private const double GramsPerOunce = 1000 * KilogramsPerPound / 16;

    private const double LitersPerGallon = 3.785411784;

    private const double KilogramsPerShortTon = 2000 * KilogramsPerPound;

    private const double SquareMetersPerAcre = 43560 * SquareMetersPerSquareFoot;

    private const double SquareMetersPerHectare = 1e4;

    public static Measure Length { get; } = new("cm", "in", 1 / CentimetersPerInch);

    public static Measure LeafAreaOfShoot { get; } = new("cm²", "in²", 1 / (CentimetersPerInch * CentimetersPerInch));

    public static Measure LeafArea { get; } = new("m²", "ft²", 1 / SquareMetersPerSquareFoot);

    public static Measure LeafAreaPerLength { get; } = new("m²/m", "ft²/ft", MetersPerFoot / SquareMetersPerSquareFoot);

    public static Measure LeafAreaDensity { get; } = new("m²/m³", "ft²/ft³", MetersPerFoot);

    public static Measure MassPerLength { get; } = new("kg/m", "lb/ft", MetersPerFoot / KilogramsPerPound);

    public static Measure PerLength { get; } = new("per m", "per ft", MetersPerFoot);

    public static Measure Mass { get; } = new("kg", "lb", 1 / KilogramsPerPound);

    public static Measure SmallMass { get; } = new("g", "oz", 1 / GramsPerOunce);

    public static Measure LeafAreaPerFruit { get; } =
        new("m²/kg", "ft²/lb", KilogramsPerPound / SquareMetersPerSquareFoot);

    public static Measure YieldPerArea { get; } =
        new("t/ha", "short tons/acre", 1000 / KilogramsPerShortTon * SquareMetersPerAcre / SquareMetersPerHectare);

    public static Measure Volume { get; } = new("L", "gal", 1 / LitersPerGallon);

    /// <summary>
    /// Grams of sugar for each weight of fruit: grams stay, as a grower of either country reads them.
    /// </summary>
    public static Measure SugarPerFruit { get; } = new("g/kg", "g/lb", KilogramsPerPound);

    /// <summary>A difference of temperature or a heat sum, not a reading of the thermometer.</summary>
    public static Measure HeatSum { get; } = new("°C d", "°F d", 1.8);

    public string Unit(Units units) => units == Units.Us ? Us : Metric;

    public double In(Units units, double metric) => units == Units.Us ? metric * UsPerMetric : metric;

    /// <summary>Number and unit, at so many decimals: "130 cm".</summary>
    public string Text(Units units, double metric, int decimals) =>
        $"{Number(In(units, metric), decimals)} {Unit(units)}";

    /// <summary>A reading of the thermometer.</summary>
    public static string Temperature(Units units, double celsius, int decimals) =>
        units == Units.Us ? $"{Number((celsius * 1.8) + 32, decimals)} °F" : $"{Number(celsius, decimals)} °C";

    /// <summary>Sugar as people write a target: a decimal only where it says something.</summary>
    public static string Brix(double brix) => $"{Number(brix, brix == Math.Round(brix) ? 0 : 1)} Brix";

    public static string Number(double value, int decimals)
    {
        var text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

        // A loss too small to show must not read as "-0.0".
        return text.StartsWith('-') && text.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? text[1..]
            : text.Replace('-', '−');
    }
}
