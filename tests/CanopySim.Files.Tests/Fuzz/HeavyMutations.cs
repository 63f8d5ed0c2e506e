using System.Text;

namespace CanopySim.Files.Tests.Fuzz;

/// <summary>
/// What makes a careless reader slow, large or dead: very long lines, deep nesting, values that unfold, very many lines, cells
/// or keys. Files grow to about a quarter of a megabyte, large enough to tell work that grows with the square.
/// </summary>
internal static class HeavyMutations
{
    private const int Largest = 250_000;

    private static readonly string[] Openers = ["[", "{a: ", "- ", "? ", "[[", "{", "- [", "{? ", "&a [", "!t ["];

    public static byte[] Changed(byte[] bytes, Dice dice)
    {
        var at = dice.Below(bytes.Length);
        var count = dice.Size(30, 200_000);
        var heavy = dice.Below(9) switch
        {
            0 => Repeated(dice.Of(OddTexts.Tokens), count),
            1 => new string((char)('a' + dice.Below(26)), count),
            2 => Repeated(dice.Of(Openers), count),
            3 => "\n" + Repeated("a_b ", count) + "\n",
            4 => Unfolding(dice),
            5 => Numbered("k{0}: 1\n", count),
            6 => Staircase(count),
            7 => Numbered(",c{0}", count),
            _ => Block(bytes, at, count),
        };
        return [.. bytes[..at], .. Encoding.UTF8.GetBytes(heavy), .. bytes[at..]];
    }

    private static string Repeated(string text, int size) =>
        new StringBuilder(size).Insert(0, text, text.Length == 0 ? 0 : Math.Max(1, Math.Min(size, Largest / 3) / text.Length)).ToString();

    // Ten names of which each holds the one before ten times: 10¹⁰ values for a reader that follows them.
    private static string Unfolding(Dice dice)
    {
        var text = new StringBuilder("\na0: &a0 [x]\n");
        for (var i = 1; i <= 10; i++)
            text.Append("a" + i + ": &a" + i + " [" + string.Join(", ", Enumerable.Repeat("*a" + (i - 1), 10)) + "]\n");
        return dice.OneIn(2) ? text.ToString() : text.Replace("&a", "a").Replace("*a", "a").ToString();
    }

    private static string Numbered(string form, int size)
    {
        var text = new StringBuilder("\n");
        for (var i = 0; text.Length < size; i++) text.AppendFormat(System.Globalization.CultureInfo.InvariantCulture, form, i);
        return text.ToString();
    }

    // Each key one step further in: its size grows with the square of its depth.
    private static string Staircase(int size)
    {
        var text = new StringBuilder("\n");
        for (var depth = 0; text.Length < size; depth++) text.Append(' ', depth).Append("a:\n");
        return text.ToString();
    }

    private static string Block(byte[] bytes, int at, int size)
    {
        var block = Encoding.Latin1.GetString(bytes[at..Math.Min(bytes.Length, at + 400)]);
        return Repeated(block, size);
    }
}
