using System.Globalization;
using System.Text.RegularExpressions;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>
/// Compares two pages: the same text, but numbers may differ by one unit of their last printed digit, since other machines round
/// otherwise. What was typed in and what was judged must be the same.
/// </summary>
internal static partial class PageComparison
{
    private static readonly string[] ExactColumns =
        ["quantity", "published", "limit", "standing", "verdict", "source", "study", "figures", "passed", "failed", "reported"];

    /// <summary>The lines that differ, as a reader wants them; empty where the pages agree.</summary>
    public static IReadOnlyList<string> Differences(string committed, string made)
    {
        var (before, after) = (committed.Split('\n'), made.Split('\n'));
        var differences = new List<string>();
        string[]? header = null;
        for (var i = 0; i < Math.Max(before.Length, after.Length); i++)
        {
            var (old, now) = (i < before.Length ? before[i] : "(no line)", i < after.Length ? after[i] : "(no line)");
            header = !IsRow(now) ? null : header ?? Cells(now);
            if (!Same(old, now, header)) differences.Add($"line {i + 1}\n  committed: {old}\n  made:      {now}");
        }

        return differences;
    }

    private static bool Same(string old, string now, string[]? header)
    {
        if (old == now) return true;
        if (header is null || !IsRow(old)) return SameNumbers(old, now, significantDigits: int.MaxValue);
        var (oldCells, nowCells) = (Cells(old), Cells(now));
        if (oldCells.Length != nowCells.Length || nowCells.Length != header.Length) return false;
        for (var column = 0; column < nowCells.Length; column++)
        {
            var same = column == 0 || ExactColumns.Contains(header[column])
                ? oldCells[column] == nowCells[column]
                : SameNumbers(oldCells[column], nowCells[column], NumberSay.Digits);
            if (!same) return false;
        }

        return true;
    }

    // Large numbers are printed rounded to their significant digits: the unit is that of the last of these.
    private static bool SameNumbers(string old, string now, int significantDigits)
    {
        if (Number().Replace(old, "#") != Number().Replace(now, "#")) return false;
        return Number().Matches(old).Zip(Number().Matches(now)).All(pair =>
        {
            var unit = Math.Max(Unit(pair.First.Value, significantDigits), Unit(pair.Second.Value, significantDigits));
            // Half a thousandth of slack: decimal fractions are not exact.
            return Math.Abs(Value(pair.First) - Value(pair.Second)) <= 1.0005 * unit;
        });
    }

    private static double Unit(string number, int significantDigits)
    {
        var point = number.IndexOf('.', StringComparison.Ordinal);
        if (point >= 0) return Math.Pow(10, point + 1 - number.Length);
        var digits = number.Count(char.IsAsciiDigit);
        return Math.Pow(10, Math.Max(0, digits - Math.Min(digits, significantDigits)));
    }

    private static double Value(Match number) => double.Parse(number.Value, CultureInfo.InvariantCulture);

    private static bool IsRow(string line) =>
        line.StartsWith("| ", StringComparison.Ordinal) && line.EndsWith(" |", StringComparison.Ordinal) && line.Length > 4;

    // A cell may be empty: only the outer bars go.
    private static string[] Cells(string row) => row[2..^2].Split(" | ");

    [GeneratedRegex(@"[-+]?\d+(\.\d+)?")]
    private static partial Regex Number();
}
