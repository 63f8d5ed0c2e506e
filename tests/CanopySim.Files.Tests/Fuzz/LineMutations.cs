using System.Text;

namespace CanopySim.Files.Tests.Fuzz;

/// <summary>Moves whole lines about: dropped, doubled, moved, swapped, joined, indented otherwise.</summary>
internal static class LineMutations
{
    public static byte[] Changed(byte[] bytes, Dice dice)
    {
        var lines = Encoding.Latin1.GetString(bytes).Split('\n').ToList();
        var (first, second) = (dice.Below(lines.Count), dice.Below(lines.Count));
        var length = Math.Min(1 + dice.Below(5), lines.Count - first);
        switch (dice.Below(10))
        {
            case 0: lines.RemoveAt(first); break;
            case 1: lines.RemoveRange(first, length); break;
            case 2: lines.Insert(first, lines[first]); break;
            case 3: lines.InsertRange(second, lines.GetRange(first, length)); break;
            case 4: (lines[first], lines[second]) = (lines[second], lines[first]); break;
            case 5: lines.Reverse(first, length); break;
            case 6: lines[first] += lines[second]; break;
            case 7: lines[first] = new string(' ', dice.Below(9)) + lines[first].TrimStart(); break;
            case 8: lines[first] = lines[first][..dice.Below(lines[first].Length)]; break;
            default:
                var moved = lines[first];
                lines.RemoveAt(first);
                lines.Insert(Math.Min(second, lines.Count), moved);
                break;
        }

        return Encoding.Latin1.GetBytes(string.Join('\n', lines));
    }
}
