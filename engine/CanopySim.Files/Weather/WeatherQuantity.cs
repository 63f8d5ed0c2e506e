namespace CanopySim.Files.Weather;

/// <summary>What a column of a weather file may hold.</summary>
internal enum WeatherQuantity
{
    Date,
    Time,
    AirTemperature,
    MinimumTemperature,
    MaximumTemperature,
    RelativeHumidity,
    DewPoint,
    GlobalRadiation,
    DiffuseRadiation,
    DirectNormalRadiation,
    Rain,
    Wind,
    Pressure,

    /// <summary>Known and of no use here, such as a day's mean temperature beside its extremes.</summary>
    Unused,
}

/// <summary>
/// Which values are possible, in the engine's unit; sensors drift a little beyond and are taken back to the bound.
/// </summary>
/// <param name="Unit">The engine's unit, for messages.</param>
/// <param name="Min">Smallest possible value.</param>
/// <param name="Max">Largest possible value.</param>
/// <param name="DriftBelow">How far below it a sensor may read by drift.</param>
/// <param name="DriftAbove">How far above it.</param>
internal readonly record struct WeatherRange(
    string Unit, double Min, double Max, double DriftBelow = 0, double DriftAbove = 0)
{
    // Extremes on record, from memory: -89 and 57 °C, 1825 mm of rain a day and 305 mm an hour. Radiation: what reaches
    // the top of
    // the air is 1361 W m⁻² and at most 45 MJ m⁻² d⁻¹ (FAO-56 Table 2.6), with room for clouds that reflect.
    // Thermopiles read
    // a few W m⁻² below zero at night, capacitive humidity sensors a few percent over saturation.
    public static WeatherRange Of(WeatherQuantity quantity, bool isDaily) => quantity switch
    {
        WeatherQuantity.AirTemperature or WeatherQuantity.MinimumTemperature or WeatherQuantity.MaximumTemperature =>
            new("°C", -60, 58),
        WeatherQuantity.DewPoint => new("°C", -75, 36),
        WeatherQuantity.RelativeHumidity => new("%", 0, 100, 0, 5),
        WeatherQuantity.GlobalRadiation when isDaily => new("MJ m-2 d-1", 0, 45, 0.5),
        WeatherQuantity.GlobalRadiation or WeatherQuantity.DiffuseRadiation or WeatherQuantity.DirectNormalRadiation =>
            new("W m-2", 0, 1600, 20),
        WeatherQuantity.Rain => isDaily ? new("mm", 0, 1900) : new("mm", 0, 320),
        WeatherQuantity.Wind => new("m s-1", 0, 75),
        WeatherQuantity.Pressure => new("kPa", 50, 109),
        _ => new("", double.NegativeInfinity, double.PositiveInfinity),
    };

    /// <summary>True for light, which is nothing at night and must stay so where gaps are filled.</summary>
    public static bool IsRadiation(WeatherQuantity quantity) => quantity is WeatherQuantity.GlobalRadiation
        or WeatherQuantity.DiffuseRadiation or WeatherQuantity.DirectNormalRadiation;

    public bool Allows(double value) => value >= Min - DriftBelow && value <= Max + DriftAbove;

    public double Within(double value) => Math.Clamp(value, Min, Max);

    public override string ToString() => FormattableString.Invariant($"{Min} to {Max} {Unit}");
}
