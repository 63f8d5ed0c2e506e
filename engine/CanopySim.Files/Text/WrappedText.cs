namespace CanopySim.Files.Text;

/// <summary>Sentences broken between words into lines for a terminal, a pipe or a mail.</summary>
internal static class WrappedText
{
    // Lines longer than this tire the eye.
    private const int Widest = 100;

    private const string Further = "  ";

    /// <summary>The lines of a text; those after the first stand further in where there is an indent.</summary>
    /// <param name="text">The text.</param>
    /// <param name="width">Columns of the terminal.</param>
    /// <param name="indent">What each line begins with.</param>
    public static IEnumerable<string> Lines(string text, int width, string indent = "")
    {
        var (line, start) = (indent, true);
        foreach (var word in text.Split(' '))
        {
            if (!start && line.Length + 1 + word.Length > Math.Min(width, Widest))
            {
                yield return line;
                (line, start) = (indent.Length > 0 ? indent + Further : "", true);
            }

            line += start ? word : $" {word}";
            start = false;
        }

        yield return line;
    }
}
