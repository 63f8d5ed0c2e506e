namespace CanopySim.Runner.Tests;

/// <summary>The shipped first season copied into a folder, for a test to break one thing in it.</summary>
internal sealed class BrokenBlock : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public BrokenBlock()
    {
        foreach (var name in new[] { "scenario.yaml", "weather.csv" })
            System.IO.File.Copy(Path.Combine(Path.GetDirectoryName(RunnerProcess.FirstSeason)!, name), _folder.File(name));
    }

    public string Folder => _folder.Path;

    public string File(string name) => _folder.File(name);

    /// <summary>Replaces text that must be there once, and returns the line it starts on, from 1.</summary>
    public int Replace(string name, string old, string replacement)
    {
        var text = System.IO.File.ReadAllText(File(name));
        var at = text.IndexOf(old, StringComparison.Ordinal);
        if (at < 0 || text.IndexOf(old, at + 1, StringComparison.Ordinal) >= 0)
            throw new InvalidOperationException($"\"{old}\" is not once in {name}");
        System.IO.File.WriteAllText(File(name), text.Replace(old, replacement, StringComparison.Ordinal));
        return 1 + text.AsSpan(0, at).Count('\n');
    }

    /// <summary>Edits one row of the weather, the one of a day, and returns its line, from 1.</summary>
    public int EditDay(string day, Func<string, IEnumerable<string>> rows)
    {
        var lines = System.IO.File.ReadAllLines(File("weather.csv")).ToList();
        var index = lines.FindIndex(line => line.StartsWith(day, StringComparison.Ordinal));
        var edited = rows(lines[index]).ToList();
        lines.RemoveAt(index);
        lines.InsertRange(index, edited);
        System.IO.File.WriteAllLines(File("weather.csv"), lines);
        return index + 1;
    }

    /// <summary>What the folder holds beside the block itself.</summary>
    public IEnumerable<string> Additions() => _folder.Entries().Except(["scenario.yaml", "weather.csv"]);

    public void Dispose() => _folder.Dispose();
}
