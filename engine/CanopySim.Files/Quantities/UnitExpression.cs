using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using UnitsNet;

namespace CanopySim.Files.Quantities;

/// <summary>
/// One unit of an expression: its dimension, its exponent and how many of the dimension's base unit it is.
/// </summary>
internal readonly record struct UnitFactor(string Name, Dimension Dimension, double Exponent, double Size);

/// <summary>
/// A unit as people write it (<c>m</c>, <c>umol m-2 s-1</c>, <c>µmol m⁻² s⁻¹</c>, <c>umol/m2/s</c>, <c>1/ft</c>), taken
/// apart into
/// the units it is made of.
/// </summary>
internal sealed partial class UnitExpression
{
    private const int MostFactors = 8;

    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    private readonly IReadOnlyList<UnitFactor> _factors;

    // In a fixed order, so that two spellings of one unit are alike.
    private UnitExpression(IEnumerable<UnitFactor> factors) =>
        _factors = [.. factors.OrderBy(factor => factor.Dimension).ThenByDescending(factor => factor.Exponent)];

    /// <summary>The one dimension of a simple unit, such as a length; null for a compound one.</summary>
    public Dimension? Simple => _factors is [{ Exponent: 1 } only] ? only.Dimension : null;

    /// <summary>True where values of one can be turned into values of the other.</summary>
    public bool Measures(UnitExpression other) => Kinds().SequenceEqual(other.Kinds());

    /// <summary>
    /// A value in this unit, in another that measures the same. A temperature alone is absolute; beside others it is a
    /// difference.
    /// </summary>
    public double Convert(double value, UnitExpression to)
    {
        if (Simple == Dimension.Temperature)
        {
            var (from, scale) = (
                UnitNames.TemperatureScale(_factors[0].Name), UnitNames.TemperatureScale(to._factors[0].Name));
            return from == scale ? value : Temperature.From(value, from).As(scale);
        }

        return ConvertDifference(value, to);
    }

    /// <summary>A value in this unit, in another that measures the same; a temperature is a difference.</summary>
    public double ConvertDifference(double value, UnitExpression to)
    {
        var (up, down) = (1.0, 1.0);
        for (var i = 0; i < _factors.Count; i++)
        {
            if (_factors[i].Size == to._factors[i].Size) continue;
            up *= Math.Pow(_factors[i].Size, _factors[i].Exponent);
            down *= Math.Pow(to._factors[i].Size, to._factors[i].Exponent);
        }

        return value * up / down;
    }

    /// <summary>Reads a unit; null where some part of it is no unit.</summary>
    public static UnitExpression? TryParse(string text)
    {
        var plain = Plain(text);
        if (plain.Equals("ppm", StringComparison.OrdinalIgnoreCase)) plain = "umol mol-1";
        var factors = new List<UnitFactor>();
        var sign = 1;
        foreach (var token in Tokens().Matches(plain).Select(match => match.Value))
        {
            if (token == "/")
            {
                if (sign < 0) return null;
                sign = -1;
                continue;
            }

            if (token == "1" && factors.Count == 0 && sign > 0) continue;
            if (ParseFactor(token, sign) is not UnitFactor factor || factors.Count == MostFactors) return null;
            factors.Add(factor);
            sign = 1;
        }

        return sign < 0 || factors.Count == 0 ? null : new UnitExpression(factors);
    }

    private static UnitFactor? ParseFactor(string token, int sign)
    {
        var part = Part().Match(token);
        if (!part.Success) return null;
        var power = part.Groups["power"];
        var exponent = power.Success ? double.Parse(power.ValueSpan, CultureInfo.InvariantCulture) : 1;
        var name = part.Groups["name"].Value;
        return exponent != 0 && UnitNames.Find(name) is var (dimension, size)
            ? new UnitFactor(name, dimension, sign * exponent, size)
            : null;
    }

    private IEnumerable<(Dimension Dimension, double Exponent)> Kinds() =>
        _factors.Select(factor => (factor.Dimension, factor.Exponent));

    private static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var letter in text)
        {
            var power = Superscripts.IndexOf(letter);
            plain.Append(letter switch
            {
                _ when power >= 0 => (char)('0' + power),
                '⁻' or '−' => '-',
                '·' or '⋅' or '*' or '\u00A0' or '\u202F' => ' ',
                'µ' or 'μ' => 'u',
                'º' => '°',
                _ => letter,
            });
        }

        return Degrees().Replace(Per().Replace(plain.ToString(), " / "), "°$1").Trim();
    }

    [GeneratedRegex(@"\bper\b", RegexOptions.IgnoreCase)]
    private static partial Regex Per();

    [GeneratedRegex(@"(?:\bdeg(?:rees?)?|°)\s*([CFK](?![A-Za-z]))")]
    private static partial Regex Degrees();

    [GeneratedRegex(@"/|[^\s/]+")]
    private static partial Regex Tokens();

    [GeneratedRegex(@"^(?<name>[\p{L}°'’""”]+)(?:\^?(?<power>[+-]?[0-9]{1,2}(?:\.[0-9]{1,2})?))?$")]
    private static partial Regex Part();
}
