using System.Text;
using CsCheck;

namespace CanopySim.Files.Tests;

/// <summary>Damages texts as people and machines do: bytes flipped, lines dropped, doubled, swapped and cut, odd tokens put in.</summary>
internal static class Mutations
{
    private static readonly string[] Tokens =
    [
        "", " ", "\t", "\n", "\r", ",", ";", ":", ": ", "- ", "#", "\"", "'", "[", "]", "{", "}", "&a ", "*a", "!!float ", "|", ">", "%", "@", "---\n", "...\n", "<<: ",
        "? ", "~", "null", "true", "yes", ".nan", ".inf", "-.inf", "NaN", "1e999", "-1", "0", "99999999999999999999", "2,4", "2.4 kg", "8 ft", "6' 3\"", "30 %", "°F", "µmol m⁻² s⁻¹",
        "2014-02-30", "2016-02-29", "0001-01-01", "24:00", "T25:00Z", "+99:99", "\0", "\u0007", "\uFEFF", "\u2028", "\uD83C", "é", "based_on: block.yaml\n", "\\x00", "\"\\0\"", "(", ")",
    ];

    private static readonly Gen<(int Kind, double Where, double Also, int Token)> Change =
        Gen.Select(Gen.Int[0, 7], Gen.Double.Unit, Gen.Double.Unit, Gen.Int[0, Tokens.Length - 1]);

    public static Gen<byte[]> Of(params string[] texts) =>
        Gen.Select(Gen.Int[0, texts.Length - 1], Change.Array[1, 4], (which, changes) => changes.Aggregate(Encoding.UTF8.GetBytes(texts[which]), Apply));

    private static byte[] Apply(byte[] bytes, (int Kind, double Where, double Also, int Token) change)
    {
        var at = (int)(change.Where * bytes.Length);
        var token = Encoding.UTF8.GetBytes(Tokens[change.Token]);
        return change.Kind switch
        {
            0 when bytes.Length > 0 => [.. bytes[..at], (byte)(change.Also * 256), .. bytes[Math.Min(at + 1, bytes.Length)..]],
            1 => [.. bytes[..at], .. token, .. bytes[at..]],
            2 => [.. bytes[..at], .. token, .. bytes[Math.Min(bytes.Length, at + 1 + (int)(change.Also * 8))..]],
            3 => bytes[..at],
            _ => Lines(bytes, change, token),
        };
    }

    private static byte[] Lines(byte[] bytes, (int Kind, double Where, double Also, int Token) change, byte[] token)
    {
        var lines = Encoding.Latin1.GetString(bytes).Split('\n').ToList();
        var (first, second) = ((int)(change.Where * lines.Count), (int)(change.Also * lines.Count));
        switch (change.Kind)
        {
            case 4: lines.RemoveAt(first); break;
            case 5: lines.Insert(second, lines[first]); break;
            case 6: (lines[first], lines[second]) = (lines[second], lines[first]); break;
            default:
                // Another value after the first separator of a line.
                var split = lines[first].IndexOfAny([':', ',']);
                if (split >= 0) lines[first] = lines[first][..(split + 1)] + " " + Encoding.Latin1.GetString(token);
                break;
        }

        return Encoding.Latin1.GetBytes(string.Join('\n', lines));
    }
}
