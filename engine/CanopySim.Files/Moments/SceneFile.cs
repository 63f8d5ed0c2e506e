using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using CanopySim.Geometry;

namespace CanopySim.Files.Moments;

/// <summary>
/// Writes <c>scene.ply</c> (binary little-endian PLY, Turk 1994): metres, y along the row, x 90° clockwise from it seen
/// from above,
/// z up; the face property leaf_id is −1 for wood and fruit.
/// </summary>
public static class SceneFile
{
    public const string FileName = "scene.ply";

    private const int BytesPerVertex = 12;

    private const int BytesPerFace = 17;

    public static void Write(string path, Scene scene)
    {
        using var stream = File.Create(path);
        Write(stream, scene);
    }

    public static void Write(Stream stream, Scene scene)
    {
        stream.Write(Encoding.ASCII.GetBytes(Header(scene)));
        Span<byte> vertex = stackalloc byte[BytesPerVertex];
        foreach (var corner in scene.Corners)
        {
            BinaryPrimitives.WriteSingleLittleEndian(vertex, corner.X);
            BinaryPrimitives.WriteSingleLittleEndian(vertex[4..], corner.Y);
            BinaryPrimitives.WriteSingleLittleEndian(vertex[8..], corner.Z);
            stream.Write(vertex);
        }

        Span<byte> face = stackalloc byte[BytesPerFace];
        face[0] = 3;
        for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            for (var corner = 0; corner < 3; corner++)
                BinaryPrimitives.WriteInt32LittleEndian(face[(1 + (4 * corner))..], (3 * triangle) + corner);
            BinaryPrimitives.WriteInt32LittleEndian(face[13..], scene.LeafIds[scene.SurfaceOfTriangle[triangle]]);
            stream.Write(face);
        }
    }

    private static string Header(Scene scene)
    {
        var cell = scene.Cell;
        return string.Create(CultureInfo.InvariantCulture, $"""
            ply
            format binary_little_endian 1.0
            comment cell across {cell.Across:R} m, along {cell.Along:R} m, rise across {cell.RiseAcross:R}, along {cell.RiseAlong:R}; it repeats without end
            element vertex {scene.Corners.Length}
            property float x
            property float y
            property float z
            element face {scene.TriangleCount}
            property list uchar int vertex_indices
            property int leaf_id
            end_header

            """).ReplaceLineEndings("\n");
    }
}
