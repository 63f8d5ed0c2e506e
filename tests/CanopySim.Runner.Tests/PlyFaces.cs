using System.Buffers.Binary;
using System.Globalization;
using System.Numerics;
using System.Text;

namespace CanopySim.Runner.Tests;

/// <summary>
/// Reads the triangles of a binary little-endian PLY (Turk 1994) as another program would: by its header alone, which must be
/// float x, y, z for a vertex, and a list of three corners and an int leaf_id for a face.
/// </summary>
internal static class PlyFaces
{
    private const string End = "end_header\n";

    public static IReadOnlyList<(int LeafId, Vector3 A, Vector3 B, Vector3 C)> Read(string path)
    {
        var bytes = File.ReadAllBytes(path);
        var start = bytes.AsSpan().IndexOf(Encoding.ASCII.GetBytes(End)) + End.Length;
        var header = Encoding.ASCII.GetString(bytes, 0, start).Split('\n').Where(line => !line.StartsWith("comment", StringComparison.Ordinal)).ToList();
        var vertices = Count(header[2], "element vertex ");
        var faces = Count(header[6], "element face ");
        string[] expected =
        [
            "ply", "format binary_little_endian 1.0", $"element vertex {vertices}", "property float x", "property float y", "property float z",
            $"element face {faces}", "property list uchar int vertex_indices", "property int leaf_id", "end_header", "",
        ];
        if (!header.SequenceEqual(expected)) throw new FormatException($"another header: {string.Join('\n', header)}");
        if (bytes.Length != start + (12 * vertices) + (17 * faces)) throw new FormatException($"{bytes.Length} bytes");
        var triangles = new List<(int, Vector3, Vector3, Vector3)>(faces);
        for (var at = start + (12 * vertices); at < bytes.Length; at += 17)
        {
            if (bytes[at] != 3) throw new FormatException($"a face of {bytes[at]} corners");
            triangles.Add((Whole(at + 13), Vertex(Whole(at + 1)), Vertex(Whole(at + 5)), Vertex(Whole(at + 9))));
        }

        return triangles;

        int Whole(int at) => BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(at));

        float Single(int at) => BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(at));

        Vector3 Vertex(int index) => new(Single(start + (12 * index)), Single(start + (12 * index) + 4), Single(start + (12 * index) + 8));
    }

    private static int Count(string line, string prefix) =>
        line.StartsWith(prefix, StringComparison.Ordinal) ? int.Parse(line[prefix.Length..], CultureInfo.InvariantCulture) : throw new FormatException(line);
}
