using System.Text;

namespace CanopySim.Files.Comparison;

/// <summary>What the options of a comparison are called, in tables and as folders: no two alike.</summary>
public static class OptionNames
{
    private const int LongestFolder = 60;

    /// <summary>
    /// The scenarios' names; where two are equal, with their file, and where that is equal too, with a number.
    /// </summary>
    /// <param name="scenarios">Name and file of each scenario.</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<(string Name, string File)> scenarios)
    {
        var equal = scenarios.GroupBy(scenario => scenario.Name, StringComparer.OrdinalIgnoreCase)
            .Where(group => group.Count() > 1).Select(group => group.Key).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return Numbered([.. scenarios.Select(scenario =>
            equal.Contains(scenario.Name) ? $"{scenario.Name} ({StemOf(scenario.File)})" : scenario.Name)], " ");
    }

    /// <summary>Folders for the options: letters, digits and dashes, never the folder of the charts.</summary>
    public static IReadOnlyList<string> FoldersOf(IReadOnlyList<string> options) =>
        Numbered([.. options.Select(FolderOf)], "-");

    /// <summary>What a scenario's file is called: its folder where the file has the name that all have.</summary>
    public static string StemOf(string path)
    {
        var file = Path.GetFileNameWithoutExtension(path);
        var folder = Path.GetFileName(Path.GetDirectoryName(Path.GetFullPath(path)));
        return file == "scenario" && !string.IsNullOrEmpty(folder) ? folder : file;
    }

    private static string FolderOf(string name)
    {
        var folder = new StringBuilder();
        foreach (var letter in name.ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(letter)) folder.Append(letter);
            else if (folder.Length > 0 && folder[^1] != '-') folder.Append('-');
        }

        var text = folder.ToString(0, Math.Min(folder.Length, LongestFolder)).Trim('-');
        return text is "" or "charts" ? "option" : text;
    }

    private static List<string> Numbered(IReadOnlyList<string> names, string between)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var unique = new List<string>();
        foreach (var name in names)
        {
            var candidate = name;
            for (var number = 2; !taken.Add(candidate); number++)
                candidate = FormattableString.Invariant($"{name}{between}{number}");
            unique.Add(candidate);
        }

        return unique;
    }
}
