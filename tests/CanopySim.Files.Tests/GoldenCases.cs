namespace CanopySim.Files.Tests;

/// <summary>
/// Reads wrong inputs with the message that each must give from a text file beside its test: a line <c>### name</c>, the input,
/// a line <c>&gt;&gt;&gt; message</c>.
/// </summary>
internal static class GoldenCases
{
    public static IEnumerable<(string Name, string Text, string Message)> Read(string file)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, file));
        string? name = null;
        var text = new List<string>();
        foreach (var line in lines)
        {
            if (line.StartsWith("### ", StringComparison.Ordinal))
            {
                (name, text) = (line[4..], []);
            }
            else if (line.StartsWith(">>> ", StringComparison.Ordinal))
            {
                yield return (name ?? throw new InvalidDataException(line), string.Join('\n', text) + "\n", line[4..]);
                name = null;
            }
            else if (name is not null)
            {
                text.Add(line);
            }
        }
    }
}
