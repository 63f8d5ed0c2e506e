using System.Text;

namespace CanopySim.Files.Tests.Fuzz;

/// <summary>
/// Damages files as people, machines and attackers do. A damaged file is a function of its address (seed, format, index), so
/// that one that fails can be made again alone.
/// </summary>
internal static class Mutations
{
    private const int MostChanges = 4;

    /// <summary>The damaged file of an address: one of the whole files with one to four changes.</summary>
    public static byte[] Of(IReadOnlyList<byte[]> whole, ulong seed, string format, long index)
    {
        var dice = new Dice(seed, format, index);
        var bytes = dice.Of(whole);
        // Half of the files have a single change: more of them are still read, and deeper stages of reading are met.
        var changes = dice.OneIn(2) ? 1 : 1 + dice.Below(MostChanges);
        for (var change = 0; change < changes; change++) bytes = Changed(bytes, dice);
        return bytes;
    }

    private static byte[] Changed(byte[] bytes, Dice dice) => dice.Below(25) switch
    {
        < 7 => Bytes(bytes, dice),
        < 14 => LineMutations.Changed(bytes, dice),
        < 22 => ValueMutations.Changed(bytes, dice),
        < 24 => Encoded(bytes, dice),
        _ => HeavyMutations.Changed(bytes, dice),
    };

    private static byte[] Bytes(byte[] bytes, Dice dice)
    {
        var at = dice.Below(bytes.Length);
        var end = Math.Min(bytes.Length, at + 1 + dice.Below(8));
        return dice.Below(9) switch
        {
            0 when bytes.Length > 0 => [.. bytes[..at], (byte)(bytes[at] ^ (1 << dice.Below(8))), .. bytes[(at + 1)..]],
            1 when bytes.Length > 0 => [.. bytes[..at], (byte)dice.Below(256), .. bytes[(at + 1)..]],
            2 => [.. bytes[..at], .. bytes[end..]],
            3 => [.. bytes[..at], .. bytes[(at + dice.Below(bytes.Length - at))..]],
            4 => [.. bytes[..at], .. Token(dice), .. bytes[at..]],
            5 => [.. bytes[..at], .. Token(dice), .. bytes[end..]],
            6 => [.. bytes[..at], .. Noise(dice), .. bytes[at..]],
            7 => [.. bytes[..end], .. bytes[at..]],
            // Cut off, as by a full disk; one in eight down to nothing.
            _ => dice.OneIn(8) ? [] : bytes[..at],
        };
    }

    private static byte[] Token(Dice dice) => Encoding.UTF8.GetBytes(dice.Of(OddTexts.Tokens));

    private static byte[] Noise(Dice dice)
    {
        var noise = new byte[1 + dice.Below(16)];
        for (var i = 0; i < noise.Length; i++) noise[i] = (byte)dice.Below(256);
        return noise;
    }

    // Other ways to write the same letters. Latin-1 carries any bytes through unharmed.
    private static byte[] Encoded(byte[] bytes, Dice dice)
    {
        var text = Encoding.Latin1.GetString(bytes);
        return dice.Below(10) switch
        {
            0 => [0xEF, 0xBB, 0xBF, .. bytes],
            1 => Encoding.Latin1.GetBytes(text.Replace("\n", "\r\n", StringComparison.Ordinal)),
            2 => Encoding.Latin1.GetBytes(text.Replace('\n', '\r')),
            3 => [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(text)],
            4 => Encoding.BigEndianUnicode.GetBytes(text),
            5 => Encoding.Latin1.GetBytes(text.ToUpperInvariant()),
            6 => Encoding.Latin1.GetBytes(text.Replace("  ", "\t", StringComparison.Ordinal)),
            7 => [.. bytes, 0],
            8 => Encoding.Latin1.GetBytes(text.Replace("\n", "\n\n", StringComparison.Ordinal)),
            _ => Encoding.Latin1.GetBytes(text.Replace("\n", " \n", StringComparison.Ordinal)),
        };
    }
}
