using System.Globalization;

namespace CanopySim.Tests.Sky;

/// <summary>A CSV table beside its test, copied to the output folder.</summary>
internal static class ReferenceTable
{
    /// <summary>Rows of cells without the header.</summary>
    public static IReadOnlyList<string[]> Read(string room, string file) =>
        [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, room, file))
            .Skip(1).Where(line => line.Length > 0).Select(line => line.Split(','))];

    public static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
