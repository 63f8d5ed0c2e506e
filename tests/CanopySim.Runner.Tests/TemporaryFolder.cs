namespace CanopySim.Runner.Tests;

/// <summary>A folder of a test's own, gone with it.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("canopysim-test-").FullName;

    public string File(string name) => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        System.IO.File.WriteAllText(File(name), text);
        return File(name);
    }

    /// <summary>Names of everything in the folder, hidden ones too.</summary>
    public string[] Entries() => [.. Directory.EnumerateFileSystemEntries(Path).Select(entry => System.IO.Path.GetFileName(entry)!).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
