using System.Text;

namespace CanopySim.Files.Weather;

/// <summary>
/// A unit of a weather column as a straight line: value in the engine's unit = factor × value + offset.
/// </summary>
internal readonly record struct WeatherUnit(double Factor, double Offset = 0)
{
    private const double MetersPerInch = 0.0254;

    private const double MetersPerMile = 1609.344;

    private const double MegajoulesPerWattDay = 0.0864;

    private static readonly Dictionary<string, WeatherUnit> Temperatures = new(StringComparer.Ordinal)
    {
        ["c"] = new(1),
        ["celsius"] = new(1),
        ["f"] = new(5.0 / 9, -32 * 5.0 / 9),
        ["fahrenheit"] = new(5.0 / 9, -32 * 5.0 / 9),
        ["k"] = new(1, -273.15),
        ["kelvin"] = new(1, -273.15),
    };

    private static readonly Dictionary<string, WeatherUnit> Humidities = new(StringComparer.Ordinal)
    {
        ["%"] = new(1),
        ["percent"] = new(1),
        ["pct"] = new(1),
        ["1"] = new(100),
        ["fraction"] = new(100),
    };

    private static readonly Dictionary<string, WeatherUnit> Lengths = new(StringComparer.Ordinal)
    {
        ["mm"] = new(1),
        ["cm"] = new(10),
        ["in"] = new(1000 * MetersPerInch),
        ["inch"] = new(1000 * MetersPerInch),
        ["inches"] = new(1000 * MetersPerInch),
        ["mmd"] = new(1),
        ["mmday"] = new(1),
        ["mmh"] = new(1),
        ["lm2"] = new(1),
        ["kgm2"] = new(1),
    };

    private static readonly Dictionary<string, WeatherUnit> Speeds = new(StringComparer.Ordinal)
    {
        ["ms"] = new(1),
        ["ms1"] = new(1),
        ["msec"] = new(1),
        ["mps"] = new(1),
        ["kmh"] = new(1 / 3.6),
        ["kmh1"] = new(1 / 3.6),
        ["kph"] = new(1 / 3.6),
        ["mph"] = new(MetersPerMile / 3600),
        ["mih"] = new(MetersPerMile / 3600),
        ["kn"] = new(1852.0 / 3600),
        ["kt"] = new(1852.0 / 3600),
        ["kts"] = new(1852.0 / 3600),
        ["knots"] = new(1852.0 / 3600),
        ["fts"] = new(0.3048),
    };

    private static readonly Dictionary<string, WeatherUnit> Pressures = new(StringComparer.Ordinal)
    {
        ["kpa"] = new(1),
        ["hpa"] = new(0.1),
        ["mbar"] = new(0.1),
        ["mb"] = new(0.1),
        ["pa"] = new(0.001),
        ["inhg"] = new(3.386389),
        ["mmhg"] = new(0.1333224),
        ["bar"] = new(100),
    };

    // Sums of a day or an hour, in MJ m⁻².
    private static readonly Dictionary<string, double> Energies = new(StringComparer.Ordinal)
    {
        ["mjm2"] = 1,
        ["mj"] = 1,
        ["kjm2"] = 0.001,
        ["jm2"] = 1e-6,
        ["jcm2"] = 0.01,
        ["kwhm2"] = 3.6,
        ["whm2"] = 0.0036,
        ["ly"] = 0.04184,
        ["langley"] = 0.04184,
        ["langleys"] = 0.04184,
        ["calcm2"] = 0.04184,
    };

    /// <summary>The unit by its name for a quantity; null for a name that is none of its units.</summary>
    public static WeatherUnit? Find(WeatherQuantity quantity, string name, bool isDaily)
    {
        var plain = Plain(name);
        return quantity switch
        {
            WeatherQuantity.AirTemperature or WeatherQuantity.MinimumTemperature or WeatherQuantity.MaximumTemperature
                or WeatherQuantity.DewPoint => In(Temperatures, plain),
            WeatherQuantity.RelativeHumidity => In(Humidities, plain),
            WeatherQuantity.Rain => In(Lengths, plain),
            WeatherQuantity.Wind => In(Speeds, plain),
            WeatherQuantity.Pressure => In(Pressures, plain),
            WeatherQuantity.GlobalRadiation or WeatherQuantity.DiffuseRadiation or WeatherQuantity.DirectNormalRadiation =>
                Radiation(plain, isDaily),
            _ => null,
        };
    }

    /// <summary>What a column without a unit is in.</summary>
    public static WeatherUnit Usual(WeatherQuantity quantity) => quantity == WeatherQuantity.Pressure
        ? new(0.1)
        : new(1);

    /// <summary>The units that are known for a quantity, for messages.</summary>
    public static string Names(WeatherQuantity quantity) => quantity switch
    {
        WeatherQuantity.RelativeHumidity => "%, 1",
        WeatherQuantity.Rain => "mm, cm, in",
        WeatherQuantity.Wind => "m/s, km/h, mph, knots",
        WeatherQuantity.Pressure => "hPa, kPa, Pa, inHg",
        WeatherQuantity.GlobalRadiation or WeatherQuantity.DiffuseRadiation or WeatherQuantity.DirectNormalRadiation =>
            "W/m2, MJ/m2, kWh/m2, J/cm2, langley",
        _ => "°C, °F, K",
    };

    /// <summary>The unit that a column without one may be in after all; null where nobody uses another.</summary>
    public static string? Other(WeatherQuantity quantity, bool isDaily) => quantity switch
    {
        WeatherQuantity.RelativeHumidity or WeatherQuantity.Rain => null,
        WeatherQuantity.Wind => "km/h",
        WeatherQuantity.Pressure => "kPa",
        WeatherQuantity.GlobalRadiation or WeatherQuantity.DiffuseRadiation or WeatherQuantity.DirectNormalRadiation =>
            isDaily
            ? "W/m2"
            : "MJ/m2",
        _ => "°F",
    };

    public double Convert(double value) => (Factor * value) + Offset;

    private static WeatherUnit? In(Dictionary<string, WeatherUnit> units, string name) =>
        units.TryGetValue(name, out var unit)
        ? unit
        : null;

    // Days hold sums [MJ m⁻² d⁻¹], hours means [W m⁻²].
    private static WeatherUnit? Radiation(string name, bool isDaily)
    {
        if (name is "wm2" or "w") return new(isDaily ? MegajoulesPerWattDay : 1);
        if (!Energies.TryGetValue(name, out var megajoules))
        {
            var withoutTime = new[] { "day1", "day", "d1", "d", "hr", "h1", "h" }.FirstOrDefault(
                time => name.EndsWith(time, StringComparison.Ordinal));
            if (withoutTime is null || !Energies.TryGetValue(name[..^withoutTime.Length], out megajoules)) return null;
        }

        return new(isDaily ? megajoules : megajoules * 1e6 / 3600);
    }

    // W/m², W m-2 and w_m2 are one: letters, digits and the percent sign stay.
    private static string Plain(string name)
    {
        var plain = new StringBuilder(name.Length);
        foreach (
            var letter in name.Replace(
                "degrees",
                "",
                StringComparison.OrdinalIgnoreCase).Replace("deg", "", StringComparison.OrdinalIgnoreCase))
        {
            if (letter is '²') plain.Append('2');
            else if (letter is '¹') plain.Append('1');
            else if (char.IsAsciiLetterOrDigit(letter) || letter == '%') plain.Append(char.ToLowerInvariant(letter));
        }

        return plain.ToString();
    }
}
