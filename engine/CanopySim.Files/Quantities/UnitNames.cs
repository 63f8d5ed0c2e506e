using UnitsNet;
using UnitsNet.Units;

namespace CanopySim.Files.Quantities;

/// <summary>
/// What a unit measures. Ratios are kept as they are written: <c>umol mol-1</c> is two amounts, not a bare number.
/// </summary>
internal enum Dimension
{
    Length,
    Mass,
    Time,
    Temperature,
    Amount,
    Pressure,
    Energy,
    Power,
    Angle,
    Sugar,
}

/// <summary>
/// The names of units that are understood, each with its size from the units library. A list and not the library's own
/// parser, to which h is a hand before it is an hour and m a minute as well as a metre.
/// </summary>
internal static class UnitNames
{
    private static readonly Dictionary<string, (Dimension Dimension, double Size)> Sizes = new(StringComparer.Ordinal)
    {
        ["m"] = Of(Length.FromMeters(1)),
        ["cm"] = Of(Length.FromCentimeters(1)),
        ["mm"] = Of(Length.FromMillimeters(1)),
        ["km"] = Of(Length.FromKilometers(1)),
        ["ft"] = Of(Length.FromFeet(1)),
        ["in"] = Of(Length.FromInches(1)),
        ["yd"] = Of(Length.FromYards(1)),
        ["mi"] = Of(Length.FromMiles(1)),
        ["kg"] = Of(Mass.FromKilograms(1)),
        ["g"] = Of(Mass.FromGrams(1)),
        ["mg"] = Of(Mass.FromMilligrams(1)),
        ["t"] = Of(Mass.FromTonnes(1)),
        ["lb"] = Of(Mass.FromPounds(1)),
        ["oz"] = Of(Mass.FromOunces(1)),
        ["d"] = Of(Duration.FromDays(1)),
        ["h"] = Of(Duration.FromHours(1)),
        ["min"] = Of(Duration.FromMinutes(1)),
        ["s"] = Of(Duration.FromSeconds(1)),
        ["wk"] = Of(Duration.FromWeeks(1)),
        ["°C"] = (Dimension.Temperature, 1),
        ["K"] = (Dimension.Temperature, 1),
        ["°F"] = (Dimension.Temperature, TemperatureDelta.FromDegreesFahrenheit(1).DegreesCelsius),
        ["mol"] = Of(AmountOfSubstance.FromMoles(1)),
        ["mmol"] = Of(AmountOfSubstance.FromMillimoles(1)),
        ["umol"] = Of(AmountOfSubstance.FromMicromoles(1)),
        ["kPa"] = Of(Pressure.FromKilopascals(1)),
        ["hPa"] = Of(Pressure.FromHectopascals(1)),
        ["Pa"] = Of(Pressure.FromPascals(1)),
        ["mbar"] = Of(Pressure.FromMillibars(1)),
        ["bar"] = Of(Pressure.FromBars(1)),
        ["psi"] = Of(Pressure.FromPoundsForcePerSquareInch(1)),
        ["MJ"] = Of(Energy.FromMegajoules(1)),
        ["kJ"] = Of(Energy.FromKilojoules(1)),
        ["J"] = Of(Energy.FromJoules(1)),
        ["kWh"] = Of(Energy.FromKilowattHours(1)),
        ["W"] = Of(Power.FromWatts(1)),
        ["kW"] = Of(Power.FromKilowatts(1)),
        ["°"] = Of(Angle.FromDegrees(1)),
        ["rad"] = Of(Angle.FromRadians(1)),
        ["Brix"] = (Dimension.Sugar, 1),
    };

    private static readonly Dictionary<string, string> OtherSpellings = new(StringComparer.OrdinalIgnoreCase)
    {
        ["'"] = "ft",
        ["’"] = "ft",
        ["foot"] = "ft",
        ["feet"] = "ft",
        ["\""] = "in",
        ["”"] = "in",
        ["inch"] = "in",
        ["inches"] = "in",
        ["metre"] = "m",
        ["metres"] = "m",
        ["meter"] = "m",
        ["meters"] = "m",
        ["centimeter"] = "cm",
        ["centimeters"] = "cm",
        ["gram"] = "g",
        ["grams"] = "g",
        ["kilogram"] = "kg",
        ["kilograms"] = "kg",
        ["lbs"] = "lb",
        ["pound"] = "lb",
        ["pounds"] = "lb",
        ["ounce"] = "oz",
        ["ounces"] = "oz",
        ["day"] = "d",
        ["days"] = "d",
        ["hour"] = "h",
        ["hours"] = "h",
        ["hr"] = "h",
        ["sec"] = "s",
        ["second"] = "s",
        ["seconds"] = "s",
        ["week"] = "wk",
        ["weeks"] = "wk",
        ["deg"] = "°",
        ["degree"] = "°",
        ["degrees"] = "°",
        ["radians"] = "rad",
        ["C"] = "°C",
        ["F"] = "°F",
        ["celsius"] = "°C",
        ["fahrenheit"] = "°F",
        ["°Brix"] = "Brix",
        ["°Bx"] = "Brix",
        ["Bx"] = "Brix",
        ["mole"] = "mol",
        ["moles"] = "mol",
        ["brix"] = "Brix",
    };

    /// <summary>Dimension and size of a unit by its name; null for a name that is no unit.</summary>
    public static (Dimension Dimension, double Size)? Find(string name) =>
        Sizes.TryGetValue(OtherSpellings.GetValueOrDefault(name, name), out var unit) ? unit : null;

    /// <summary>The scale of an absolute temperature by its unit's name.</summary>
    public static TemperatureUnit TemperatureScale(string name) => OtherSpellings.GetValueOrDefault(name, name) switch
    {
        "°F" => TemperatureUnit.DegreeFahrenheit,
        "K" => TemperatureUnit.Kelvin,
        _ => TemperatureUnit.DegreeCelsius,
    };

    /// <summary>What is measured, in the reader's words.</summary>
    public static string Words(Dimension dimension) => dimension switch
    {
        Dimension.Length => "a length",
        Dimension.Mass => "a mass",
        Dimension.Time => "a duration",
        Dimension.Temperature => "a temperature",
        Dimension.Amount => "an amount of substance",
        Dimension.Pressure => "a pressure",
        Dimension.Energy => "an energy",
        Dimension.Power => "a power",
        Dimension.Angle => "an angle",
        _ => "a sugar content",
    };

    private static (Dimension Dimension, double Size) Of(Length length) => (Dimension.Length, length.Meters);

    private static (Dimension Dimension, double Size) Of(Mass mass) => (Dimension.Mass, mass.Kilograms);

    private static (Dimension Dimension, double Size) Of(Duration duration) => (Dimension.Time, duration.Days);

    private static (Dimension Dimension, double Size) Of(AmountOfSubstance amount) => (Dimension.Amount, amount.Moles);

    private static (Dimension Dimension, double Size) Of(Pressure pressure) =>
        (Dimension.Pressure, pressure.Kilopascals);

    private static (Dimension Dimension, double Size) Of(Energy energy) => (Dimension.Energy, energy.Megajoules);

    private static (Dimension Dimension, double Size) Of(Power power) => (Dimension.Power, (double)power.Watts);

    private static (Dimension Dimension, double Size) Of(Angle angle) => (Dimension.Angle, angle.Degrees);
}
