using System.Globalization;
using System.Text.RegularExpressions;
using CanopySim.Assessment;
using CanopySim.Files.Quantities;
using CanopySim.Parameters;
using CanopySim.Training;

namespace CanopySim.Files.Notes;

/// <summary>What a note's value cell and unit cell say: the same words whichever column they stand in.</summary>
internal static partial class NoteValues
{
    // The US gallon, 231 cubic inches, exactly.
    private const double LitersPerGallon = 3.785411784;

    private static readonly ParameterAttribute ShootLength = new("m", 0, 8, "");
    private static readonly ParameterAttribute BladeLength = new("m", 0.01, 0.4, "");
    private static readonly ParameterAttribute Height = new("m", 0.3, 5, "");
    private static readonly ParameterAttribute Width = new("m", 0.15, 4, "");
    private static readonly ParameterAttribute Depth = new("mm", 0.5, 200, "");

    // Area from length and width in cm: Buttaro et al. 2015, Photosynthetica 53:342-348.
    private const double AreaPerLengthTimesWidth = 0.914;
    private const double AreaLess = 0.465;

    // Width over length of a blade, in the same paper about.
    private const double WidthPerLength = 1.1;

    /// <summary>The note with what its cells say.</summary>
    /// <param name="note">The note, without value.</param>
    /// <param name="value">The value cell.</param>
    /// <param name="unit">The unit cell, or the unit of the column's header.</param>
    /// <param name="key">Header of the value's column, for errors.</param>
    /// <exception cref="InputError">They do not say what such a note tells.</exception>
    public static FieldNote Read(FieldNote note, string value, string unit, string key)
    {
        var text = Halves().Replace($"{value.Trim()} {unit.Trim()}".Trim(), Half);
        var fault = (Func<string, string, InputError>)((found, expected) => new InputError(note.Place, found, expected, key));
        return note.Kind switch
        {
            NoteKind.ShootLength => Quantity(note, text, ShootLength, NoteMeasure.Length, fault),
            NoteKind.Nodes => Count(note, text, ["nodes", "node", "leaves"], 80, NoteMeasure.Count, fault),
            NoteKind.Budbreak or NoteKind.Bloom or NoteKind.Veraison => Share(note, text, "", fault),
            NoteKind.LeafSize => LeafSize(note, text, fault),
            NoteKind.Clusters => note.Shoot.Length > 0 || Has(text, "shoot")
                ? Count(note, Without(text, "shoot"), ["clusters", "cluster"], 8, NoteMeasure.PerShoot, fault)
                : Count(note, Without(text, "vine"), ["clusters", "cluster"], 500, NoteMeasure.PerVine, fault),
            NoteKind.BerrySugar => Sugar(note, text, fault),
            NoteKind.Tip => Tip(note, text, fault),
            NoteKind.UpperInternodes => Upper(note, text, fault),
            NoteKind.Spray => Spray(note, text, fault),
            NoteKind.Irrigation => Irrigation(note, text, fault),
            NoteKind.ShootThinning => Shoots(note, text, fault),
            NoteKind.Tucking => note with { Measure = NoteMeasure.Nothing },
            NoteKind.Topping => Has(text, "node")
                ? Count(note, text, ["nodes", "node"], 60, NoteMeasure.Count, fault)
                : Quantity(note, text, Height, NoteMeasure.Length, fault),
            NoteKind.SideHedging => Quantity(note, text, Width, NoteMeasure.Length, fault),
            NoteKind.LeafRemoval => Share(note with { Side = SideOf(text) }, text, "morning afternoon both side sides", fault),
            NoteKind.LateralRemoval => Share(note, text, "", fault),
            NoteKind.ClusterThinning => text.Contains('%')
                ? Share(note, text, "", fault)
                : Count(note, Without(text, "shoot"), ["clusters", "cluster"], 5, NoteMeasure.PerShoot, fault),
            _ => throw new ArgumentOutOfRangeException(nameof(note), note.Kind, "unknown kind of note"),
        };
    }

    private static FieldNote Quantity(
        FieldNote note, string text, ParameterAttribute range, NoteMeasure measure, Func<string, string, InputError> fault)
    {
        if (QuantityText.Read(text, range, out var wrong) is { } number)
            return note with { Measure = measure, Value = number };
        throw fault(wrong!.Found, wrong.Expected);
    }

    private static FieldNote Count(
        FieldNote note, string text, string[] unitNames, double most, NoteMeasure measure,
        Func<string, string, InputError> fault)
    {
        var expected = FormattableString.Invariant($"a count from 0 to {most}, or a mean of counts");
        var (number, unit) = NumberAndUnit(text, expected, fault);
        if (unit.Length > 0 && !unitNames.Contains(unit, StringComparer.OrdinalIgnoreCase))
            throw fault($"{InputError.Quote(text)} has the unit {InputError.Quote(unit)}", expected);
        if (number < 0 || number > most) throw fault($"{InputError.Quote(text)} is out of range", expected);
        return note with { Measure = measure, Value = number };
    }

    private static FieldNote Share(
        FieldNote note, string text, string alsoAllowed, Func<string, string, InputError> fault)
    {
        const string Expected = "a percentage from 0 to 100 %";
        var (number, unit) = NumberAndUnit(text, Expected, fault);
        var words = unit.Split([' ', '%'], StringSplitOptions.RemoveEmptyEntries);
        var hasPercent = unit.Contains('%') || words.Contains("percent", StringComparer.OrdinalIgnoreCase);
        var allowed = alsoAllowed.Split(' ').Append("percent").ToList();
        if (words.FirstOrDefault(word => !allowed.Contains(word.ToLowerInvariant())) is { } odd)
            throw fault($"{InputError.Quote(text)} has the unit {InputError.Quote(odd)}", Expected);
        if (!hasPercent && number is > 0 and < 1)
            throw fault($"{InputError.Quote(text)} could be a share or less than one percent", $"{Expected}, written with %");
        if (number is < 0 or > 100) throw fault($"{InputError.Quote(text)} is out of range", Expected);
        return note with { Measure = NoteMeasure.Share, Value = number / 100 };
    }

    private static FieldNote LeafSize(FieldNote note, string text, Func<string, string, InputError> fault)
    {
        var parts = Times().Split(text);
        if (parts.Length > 2) throw fault(InputError.Quote(text), "length x width of a blade");
        var unit = Unit().Match(parts[^1]).Value.Trim();
        var length = One(parts[0], unit);
        var width = parts.Length > 1 ? One(parts[1], unit) : WidthPerLength * length;
        if (width < 0.4 * length || width > 2.5 * length)
            throw fault($"{InputError.Quote(text)} is no shape of a blade", "length x width, which are nearly alike");
        var area = Math.Max(0, (AreaPerLengthTimesWidth * 1e4 * length * width) - AreaLess) * 1e-4;
        return note with { Measure = NoteMeasure.LeafArea, Value = area };

        double One(string part, string unitOfBoth)
        {
            var own = Unit().Match(part).Value.Trim();
            var whole = own.Length > 0 ? part.Trim() : $"{part.Trim()} {unitOfBoth}".Trim();
            return Quantity(note, whole, BladeLength, NoteMeasure.Length, fault).Value;
        }
    }

    private static FieldNote Sugar(FieldNote note, string text, Func<string, string, InputError> fault)
    {
        const string Expected = "Brix, 0 to 35";
        var (number, unit) = NumberAndUnit(text, Expected, fault);
        if (unit.Length > 0 && !SugarUnit().IsMatch(unit))
            throw fault($"{InputError.Quote(text)} has the unit {InputError.Quote(unit)}", Expected);
        if (number is < 0 or > 35) throw fault($"{InputError.Quote(text)} is out of range", Expected);
        return note with { Measure = NoteMeasure.Sugar, Value = number };
    }

    private static FieldNote Tip(FieldNote note, string text, Func<string, string, InputError> fault)
    {
        var words = text.ToLowerInvariant();
        var stopped = Has(words, "stop") || Has(words, "dead") || Has(words, "cut off") || Has(words, "inactive");
        var above = Tendrils(words, "above") || Has(words, "tip below");
        var below = Tendrils(words, "below") || Has(words, "tip above");
        if ((stopped ? 1 : 0) + (above ? 1 : 0) + (below ? 1 : 0) != 1)
            throw fault(Said(text), "tendrils above tip, tip above tendrils, or stopped");
        var state = stopped ? TipState.Stopped : above ? TipState.GrowingFreely : TipState.Slowing;
        return note with { Measure = NoteMeasure.Nothing, Tip = state };

        static bool Tendrils(string words, string where) => Has(words, $"tendrils {where}") || words.Trim() == where;
    }

    private static FieldNote Upper(FieldNote note, string text, Func<string, string, InputError> fault)
    {
        var words = text.ToLowerInvariant();
        var shorter = words is "shortening" or "shorter" or "getting shorter" or "short";
        if (!shorter && words is not ("even" or "alike" or "not shorter" or "not shortening"))
            throw fault(Said(text), "even, or shortening");
        var upper = shorter ? UpperInternodes.Shortening : UpperInternodes.Even;
        return note with { Measure = NoteMeasure.Nothing, Upper = upper };
    }

    private static string Said(string text) => text.Length == 0 ? "no value" : InputError.Quote(text);

    private static FieldNote Spray(FieldNote note, string text, Func<string, string, InputError> fault)
    {
        if (text.Length == 0) throw fault("no name", "a name of your own for the spray");
        var (sulfur, oil) = (SulfurWord().IsMatch(text), OilWord().IsMatch(text));
        if (sulfur && oil)
            throw fault($"{InputError.Quote(text)} names sulfur and oil", "one line for each, so that each has its cautions");
        var kind = sulfur ? SprayKind.Sulfur : oil ? SprayKind.Oil : SprayKind.Other;
        return note with { Measure = NoteMeasure.Nothing, Label = text, Spray = kind };
    }

    private static FieldNote Irrigation(FieldNote note, string text, Func<string, string, InputError> fault)
    {
        var volume = PerVine().Match(text);
        if (!volume.Success)
        {
            return Quantity(note, text, Depth, NoteMeasure.Depth, (found, expected) => fault(
                found, expected.StartsWith("a length", StringComparison.Ordinal)
                    ? "mm or in over the whole ground, or liters or gallons per vine"
                    : expected));
        }

        var (number, _) = NumberAndUnit(text, "liters or gallons per vine", fault);
        var liters = number * (volume.Groups["gallon"].Success ? LitersPerGallon : 1);
        if (liters is < 0 or > 2000) throw fault($"{InputError.Quote(text)} is out of range", "0 to 2000 liters per vine");
        return note with { Measure = NoteMeasure.LitersPerVine, Value = liters };
    }

    private static FieldNote Shoots(FieldNote note, string text, Func<string, string, InputError> fault)
    {
        const string Expected = "shoots/m, shoots/ft or shoots/vine that stayed";
        var (number, unit) = NumberAndUnit(text, Expected, fault);
        var per = ShootsPer().Match(unit);
        if (!per.Success) throw fault(unit.Length > 0 ? InputError.Quote(text) : $"{InputError.Quote(text)} has no unit", Expected);
        var (measure, value, most) = per.Groups["per"].Value.ToLowerInvariant() switch
        {
            "vine" => (NoteMeasure.PerVine, number, 1000),
            "ft" or "foot" => (NoteMeasure.PerMeter, number / 0.3048, 200),
            _ => (NoteMeasure.PerMeter, number, 200),
        };
        if (value <= 0 || value > most) throw fault($"{InputError.Quote(text)} is out of range", Expected);
        return note with { Measure = measure, Value = value };
    }

    private static CanopySide SideOf(string text) =>
        Has(text, "morning") ? CanopySide.Morning : Has(text, "afternoon") ? CanopySide.Afternoon : CanopySide.Both;

    private static (double Number, string Unit) NumberAndUnit(
        string text, string expected, Func<string, string, InputError> fault)
    {
        if (text.Length == 0) throw fault("no value", expected);
        var match = NumberThenUnit().Match(text);
        if (!match.Success) throw fault($"{InputError.Quote(text)} is not a number", expected);
        var unit = match.Groups["unit"].Value.Trim();
        if (unit.StartsWith(',')) throw fault($"{InputError.Quote(text)} has a comma in its number", $"{expected}, with a decimal point");
        return (double.Parse(match.Groups["number"].ValueSpan, CultureInfo.InvariantCulture), unit);
    }

    private static bool Has(string text, string words) => text.Contains(words, StringComparison.OrdinalIgnoreCase);

    private static string Without(string text, string per) =>
        Regex.Replace(text, $@"(?:/|\bper\s+|\ba\s+){per}\b", "", RegexOptions.IgnoreCase).Trim();

    // 12 1/2 and 12½ are what a tape in inches is read to.
    private static string Half(Match match)
    {
        var whole = match.Groups["whole"].Value;
        var part = match.Groups["sign"].Value switch
        {
            "½" => 0.5,
            "¼" => 0.25,
            "¾" => 0.75,
            _ => double.Parse(match.Groups["top"].Value, CultureInfo.InvariantCulture)
                / double.Parse(match.Groups["bottom"].Value, CultureInfo.InvariantCulture),
        };
        return ((whole.Length > 0 ? double.Parse(whole, CultureInfo.InvariantCulture) : 0) + part)
            .ToString(CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"(?<whole>\b[0-9]{1,4})?\s*(?<sign>[½¼¾])|(?<whole>\b[0-9]{1,4})\s+(?<top>1?[0-9])/(?<bottom>2|4|8|16)\b")]
    private static partial Regex Halves();

    [GeneratedRegex(@"^(?<number>[+-]?(?:[0-9]{1,9}(?:\.[0-9]{0,9})?|\.[0-9]{1,9}))\s*(?<unit>.*)$")]
    private static partial Regex NumberThenUnit();

    [GeneratedRegex(@"\s*[x×*]\s*", RegexOptions.IgnoreCase)]
    private static partial Regex Times();

    [GeneratedRegex(@"[a-z""'”’]+\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex Unit();

    [GeneratedRegex(@"^°?\s*(?:brix|bx)$", RegexOptions.IgnoreCase)]
    private static partial Regex SugarUnit();

    [GeneratedRegex(@"\bsul(?:f|ph)ur\b", RegexOptions.IgnoreCase)]
    private static partial Regex SulfurWord();

    [GeneratedRegex(@"\boil\b", RegexOptions.IgnoreCase)]
    private static partial Regex OilWord();

    [GeneratedRegex(@"(?:\b(?:l|liters?|litres?)|(?<gallon>\bgal(?:lons?)?))\s*(?:/|per\s+|a\s+)\s*vine\b", RegexOptions.IgnoreCase)]
    private static partial Regex PerVine();

    [GeneratedRegex(@"^(?:shoots?|1)?\s*(?:/|per\s+|a\s+)\s*(?<per>vine|m|meter|metre|ft|foot)\b", RegexOptions.IgnoreCase)]
    private static partial Regex ShootsPer();
}
