namespace CanopySim.Files.Text;

/// <summary>Sentences in lines of a terminal.</summary>
internal static class WrappedText
{
    // Lines longer than this tire the eye.
    private const int Widest = 100;

    private const string Hanging = "  ";

    /// <summary>A sentence in lines, broken between words.</summary>
    /// <param name="text">The sentence.</param>
    /// <param name="width">Columns.</param>
    /// <param name="indent">What stands before each line; where there is one, further lines stand deeper.</param>
    public static IEnumerable<string> Lines(string text, int width, string indent = "")
    {
        var (line, start) = (indent, true);
        foreach (var word in text.Split(' '))
        {
            if (!start && line.Length + 1 + word.Length > Math.Min(width, Widest))
            {
                yield return line;
                (line, start) = (indent.Length > 0 ? indent + Hanging : "", true);
            }

            line += start ? word : $" {word}";
            start = false;
        }

        yield return line;
    }
}
