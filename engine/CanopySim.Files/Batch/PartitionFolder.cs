using System.Text;

namespace CanopySim.Files.Batch;

/// <summary>Folders whose name says what a column holds in all files below, as <c>scenario=upright%20hedge</c>.</summary>
internal static class PartitionFolder
{
    /// <summary>Most bytes of a name in the usual file systems.</summary>
    public const int LongestName = 255;

    /// <summary>Letters and digits of any script stay as they are; other signs stand as the percent codes of addresses.</summary>
    public static string Name(string column, string value)
    {
        var name = new StringBuilder(column).Append('=');
        foreach (var sign in value.EnumerateRunes())
        {
            var text = sign.ToString();
            name.Append(Rune.IsLetterOrDigit(sign) ? text : Uri.EscapeDataString(text));
        }

        return name.ToString();
    }
}
