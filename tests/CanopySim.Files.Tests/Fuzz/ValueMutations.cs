using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace CanopySim.Files.Tests.Fuzz;

/// <summary>Changes values and leaves the form: other numbers, units and dates, values swapped. Most such files are well formed.</summary>
internal static partial class ValueMutations
{
    private static readonly char[] Separators = [':', ',', ';'];

    public static byte[] Changed(byte[] bytes, Dice dice)
    {
        var lines = Encoding.UTF8.GetString(bytes).Split('\n');
        var (first, second) = (dice.Below(lines.Length), dice.Below(lines.Length));
        lines[first] = dice.Below(9) switch
        {
            0 => AfterSeparator(lines[first], dice.Of(OddTexts.Tokens), dice),
            1 => Replace(Number(), lines[first], dice, _ => dice.Of(OddTexts.Numbers)),
            2 or 3 or 4 => Replace(Number(), lines[first], dice, number => Nudged(number, dice)),
            5 => Replace(Date(), lines[first], dice, date => OtherDate(date, dice)),
            6 => Replace(Unit(), lines[first], dice, _ => " " + dice.Of(OddTexts.Units)),
            7 => AfterSeparator(lines[first], Value(lines[second]), dice),
            _ => Replace(Number(), lines[first], dice, number => Number().Match(lines[second]) is { Success: true } other ? other.Value : number),
        };
        return Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }

    private static string Nudged(string text, Dice dice)
    {
        var value = double.Parse(text, CultureInfo.InvariantCulture);
        var nudged = dice.Below(7) switch
        {
            0 => -value,
            1 => value * 10,
            2 => value / 10,
            3 => value + 1,
            4 => value - 1,
            5 => value * (0.8 + (0.4 * dice.Unit())),
            _ => value * Math.Pow(10, 600 * (dice.Unit() - 0.5)),
        };
        return nudged.ToString("R", CultureInfo.InvariantCulture);
    }

    // Days and years off, so that rows come twice, out of order or after a gap.
    private static string OtherDate(string text, Dice dice) =>
        dice.OneIn(2) && DateOnly.TryParse(text, CultureInfo.InvariantCulture, out var date) && date.Year is > 100 and < 9900
            ? date.AddDays(dice.Below(3) switch { 0 => dice.Below(41) - 20, 1 => dice.Below(801) - 400, _ => dice.Below(36_500) }).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
            : dice.Of(OddTexts.Dates);

    private static string Value(string line) => line[(line.IndexOfAny(Separators) + 1)..];

    private static string AfterSeparator(string line, string value, Dice dice)
    {
        var places = Enumerable.Range(0, line.Length).Where(at => Separators.Contains(line[at])).ToArray();
        return places.Length == 0 ? line : line[..(dice.Of(places) + 1)] + " " + value;
    }

    private static string Replace(Regex what, string line, Dice dice, Func<string, string> with)
    {
        var found = what.Matches(line);
        if (found.Count == 0) return line;
        var match = dice.Of(found);
        return string.Concat(line.AsSpan(0, match.Index), with(match.Value), line.AsSpan(match.Index + match.Length));
    }

    [GeneratedRegex(@"(?<![A-Za-z0-9_])-?[0-9]{1,15}(?:\.[0-9]{1,15})?")]
    private static partial Regex Number();

    [GeneratedRegex(@"[0-9]{4}-[0-9]{2}-[0-9]{2}")]
    private static partial Regex Date();

    [GeneratedRegex(@"(?<=[0-9]) [A-Za-z°%/][^#,\]]*|\[[^\]]*\]|\([^\)]*\)")]
    private static partial Regex Unit();
}
