namespace CanopySim.Files.Text;

/// <summary>Finds the known name that a misspelt one was meant to be.</summary>
internal static class NearestName
{
    private const int LongestName = 64;

    private const int ShortestStem = 4;

    /// <summary>
    /// The closest of the names, or null where none comes close: at most a third of the letters, two at least, may
    /// differ.
    /// </summary>
    public static string? Among(string found, IEnumerable<string> names)
    {
        if (found.Length is 0 or > LongestName) return null;
        string? nearest = null;
        var least = Math.Max(2, found.Length / 3) + 1;
        foreach (var name in names)
        {
            var distance = Extends(found, name) ? 1 : Distance(found, name);
            // A short name is not turned into quite another one.
            if (distance >= least || distance >= Math.Max(found.Length, name.Length) - 1) continue;
            (least, nearest) = (distance, name);
        }

        return nearest;
    }

    /// <summary>
    /// Letters to insert, delete, replace or swap with their neighbour, without regard to case (optimal string
    /// alignment,
    /// the restricted form of Damerau 1964, doi:10.1145/363958.363994).
    /// </summary>
    public static int Distance(string a, string b)
    {
        var (before, previous, current) = (new int[b.Length + 1], new int[b.Length + 1], new int[b.Length + 1]);
        for (var j = 0; j <= b.Length; j++) previous[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            current[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var replace = previous[j - 1] + (Same(a[i - 1], b[j - 1]) ? 0 : 1);
                current[j] = Math.Min(replace, 1 + Math.Min(previous[j], current[j - 1]));
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                    current[j] = Math.Min(current[j], before[j - 2] + 1);
            }

            (before, previous, current) = (previous, current, before);
        }

        return previous[b.Length];
    }

    // One is the beginning of the other: rainfall and rain.
    private static bool Extends(string a, string b) =>
        Math.Min(a.Length, b.Length) >= ShortestStem
            && (a.StartsWith(b, StringComparison.OrdinalIgnoreCase)
                || b.StartsWith(a, StringComparison.OrdinalIgnoreCase));

    private static bool Same(char a, char b) => char.ToLowerInvariant(a) == char.ToLowerInvariant(b);
}
