using CanopySim.Light;

namespace CanopySim.Bench;

/// <summary>Markdown as the README takes it.</summary>
internal static class Tables
{
    public static void PrintHeader(params string[] titles)
    {
        Console.WriteLine();
        Row(titles);
        Console.WriteLine($"|{string.Concat(Enumerable.Repeat("---|", titles.Length))}");
    }

    public static void Row(params IEnumerable<string> cells) => Console.WriteLine($"| {string.Join(" | ", cells)} |");

    public static string Text(FormattableString text) => FormattableString.Invariant(text);

    public static string Pixels(LightQuality quality) => Text($"{1000 * quality.SkyPixel:0.#} mm, {1000 * quality.SunPixel:0.#} mm");
}
