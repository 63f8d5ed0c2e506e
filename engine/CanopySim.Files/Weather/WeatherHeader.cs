using System.Text.RegularExpressions;
using CanopySim.Files.Text;

namespace CanopySim.Files.Weather;

/// <summary>A column that is read: where it is, what its header says, what it holds and in which unit.</summary>
internal readonly record struct WeatherColumn(int Index, string Header, WeatherQuantity Quantity, string? UnitName);

/// <summary>
/// Recognises the headers of weather tables: names as stations and databases write them, with or without a unit.
/// </summary>
internal static partial class WeatherHeader
{
    private static readonly Dictionary<string, WeatherQuantity> Names = BuildNames();

    // A header may be one very long line: no more of its words are tried than a name has.
    private static readonly int MostWords = Names.Keys.Max(name => name.Split(' ').Length);

    /// <summary>What a header says; null for one that means nothing here.</summary>
    public static WeatherColumn? Recognise(string header, int index, InputPlace place)
    {
        var (name, unit) = SplitUnit(header);
        var tokens = Tokens(name);
        if (tokens.Length == 0) return null;
        if (unit is not null && Names.TryGetValue(string.Join(' ', tokens.Concat(Tokens(unit))), out var withBracket))
            return new WeatherColumn(index, header, withBracket, null);
        for (var count = Math.Min(tokens.Length, MostWords); count > 0; count--)
        {
            if (!Names.TryGetValue(string.Join(' ', tokens[..count]), out var quantity)) continue;
            var rest = string.Join(' ', tokens[count..]);
            if (rest.Length == 0) return new WeatherColumn(index, header, quantity, unit);
            if (unit is null && IsUnit(quantity, rest)) return new WeatherColumn(index, header, quantity, rest);
            if (rest.AsSpan().IndexOfAny("/%°²") >= 0)
                throw new InputError(
                    place with { Column = index + 1 },
                    $"the unit {InputError.Quote(rest)}",
                    $"one of {WeatherUnit.Names(quantity)}",
                    header);
            // Another quantity of the same stem, such as a wind direction.
            return null;
        }

        return null;
    }

    /// <summary>
    /// The known name that an unknown header comes very close to: a slip of the keyboard, not another quantity.
    /// </summary>
    public static string? Misspelt(string header)
    {
        var name = string.Join(' ', Tokens(SplitUnit(header).Name));
        return Names.Keys.FirstOrDefault(known =>
            known.Length >= 4 && known[0] == name.FirstOrDefault()
                && NearestName.Distance(name, known) <= (known.Length >= 8 ? 2 : 1))?.Replace(' ', '_');
    }

    /// <summary>Header and unit of "header [unit]" or "header (unit)"; the unit null where there is none.</summary>
    public static (string Name, string? Unit) SplitUnit(string header)
    {
        var match = Bracket().Match(header);
        return match.Success
            ? (match.Groups["name"].Value.Trim(), match.Groups["unit"].Value.Trim())
            : (header.Trim(), null);
    }

    public static bool IsUnit(WeatherQuantity quantity, string unit) =>
        WeatherUnit.Find(quantity, unit, isDaily: true) is not null;

    private static string[] Tokens(string name) =>
        Separators().Split(
            CamelCase().Replace(name, "$1 $2").ToLowerInvariant()).Where(token => token.Length > 0).ToArray();

    private static Dictionary<string, WeatherQuantity> BuildNames()
    {
        var names = new Dictionary<string, WeatherQuantity>(StringComparer.Ordinal);
        Add(
            WeatherQuantity.Date,
            "date",
            "day",
            "datetime",
            "date time",
            "timestamp",
            "time stamp",
            "local time",
            "date local");
        Add(WeatherQuantity.Time, "time", "hour", "hr", "hour of day");
        Add(
            WeatherQuantity.AirTemperature,
            "air temperature",
            "temperature",
            "temp",
            "air temp",
            "t",
            "tair",
            "t air",
            "ta",
            "dry bulb",
            "dry bulb temperature",
            "temperature 2m");
        Add(
            WeatherQuantity.Unused,
            "tmean",
            "t mean",
            "tavg",
            "t avg",
            "temp mean",
            "mean temp",
            "temperature mean",
            "mean temperature",
            "temp avg",
            "avg temp",
            "temperature avg",
            "average temperature");
        foreach (var (quantity, short1, short2, long1, tail) in new[]
        {
            (WeatherQuantity.MinimumTemperature, "min", "mn", "minimum", "n"),
            (WeatherQuantity.MaximumTemperature, "max", "mx", "maximum", "x"),
        })
        {
            foreach (var extreme in new[] { short1, short2, long1 })
                foreach (var stem in new[] { "t", "temp", "temperature", "air temperature", "air temp" })
                    Add(quantity, $"{stem} {extreme}", $"{extreme} {stem}");
            Add(
                quantity,
                $"t{short1}",
                $"t{short2}",
                $"temp{short1}",
                $"t{tail}",
                $"{short1}temp",
                $"temperature 2m {short1}");
        }

        Add(
            WeatherQuantity.RelativeHumidity,
            "relative humidity",
            "rh",
            "humidity",
            "rel humidity",
            "rh mean",
            "mean rh",
            "relative humidity mean",
            "relative humidity 2m",
            "rhmean");
        Add(
            WeatherQuantity.DewPoint,
            "dew point",
            "dewpoint",
            "dew",
            "tdew",
            "t dew",
            "td",
            "dew point temperature",
            "dewpoint temperature",
            "dew point 2m");
        Add(
            WeatherQuantity.GlobalRadiation,
            "global radiation",
            "solar radiation",
            "solar",
            "radiation",
            "ghi",
            "rs",
            "srad",
            "rad",
            "global",
            "glorad",
            "shortwave radiation",
            "global horizontal irradiance",
            "global horizontal radiation",
            "global irradiance",
            "solar irradiance",
            "sw in",
            "shortwave radiation sum");
        Add(
            WeatherQuantity.DiffuseRadiation,
            "diffuse radiation",
            "diffuse",
            "dhi",
            "diffuse horizontal irradiance",
            "diffuse horizontal radiation",
            "diffuse irradiance");
        Add(
            WeatherQuantity.DirectNormalRadiation,
            "direct normal radiation",
            "dni",
            "direct normal irradiance",
            "direct normal");
        Add(
            WeatherQuantity.Rain,
            "rain",
            "rainfall",
            "precipitation",
            "precip",
            "prcp",
            "prec",
            "ppt",
            "precipitation sum",
            "rain sum");
        Add(
            WeatherQuantity.Wind,
            "wind",
            "wind speed",
            "windspeed",
            "ws",
            "u2",
            "u10",
            "wind mean",
            "wind speed mean",
            "mean wind speed",
            "wind speed 10m",
            "avg wind speed");
        Add(
            WeatherQuantity.Pressure,
            "pressure",
            "air pressure",
            "station pressure",
            "atmospheric pressure",
            "surface pressure",
            "barometric pressure");
        return names;

        void Add(WeatherQuantity quantity, params string[] spellings)
        {
            foreach (var spelling in spellings) names.TryAdd(spelling, quantity);
        }
    }

    [GeneratedRegex(@"^(?<name>[^\[\(]+)[\[\(](?<unit>[^\]\)]*)[\]\)]\s*$")]
    private static partial Regex Bracket();

    [GeneratedRegex(@"[\s_.\-]+")]
    private static partial Regex Separators();

    [GeneratedRegex(@"([a-z])([A-Z][a-z])")]
    private static partial Regex CamelCase();
}
