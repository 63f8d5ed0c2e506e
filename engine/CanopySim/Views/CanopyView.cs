using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;

namespace CanopySim.Views;

/// <summary>
/// Which surface of an endless row is seen at each place of a picture, and how brightly it is lit, by the same raster
/// that casts the sun's shadows: the scene is turned until the viewer is its sun. From the side one row is seen, the
/// first of the cell, and heights are those over the ground. Where the row or the rows repeat so does the picture.
/// </summary>
public sealed class CanopyView
{
    // Light of the pictures, from above to the left of the viewer: right, up, towards the viewer.
    private static readonly Vector3 Lamp = Vector3.Normalize(new Vector3(-0.4f, 0.6f, 0.7f));
    private const double Ambient = 0.7;

    private readonly double _width;
    private readonly double _bottom;
    private readonly double _height;
    private readonly bool _repeatsUpwards;
    private readonly int _columns;
    private readonly int _rows;
    private readonly int[] _surfaces;
    private readonly float[] _brightness;

    private CanopyView(Scene scene, ViewSide side, double pixel)
    {
        // Seen from the side other rows would fill the gaps of the first.
        var isSeen =
            Array.ConvertAll(scene.SurfaceOfTriangle, surface => side != ViewSide.Front || scene.RowOf(surface) == 0);
        var corners = scene.Corners.Where((_, at) => isSeen[at / 3]).Select(corner => Turned(scene.Cell, corner, side))
            .ToArray();
        _width = side == ViewSide.Along ? scene.Cell.Across : scene.Cell.Along;
        _repeatsUpwards = side == ViewSide.Above;
        var (lowest, highest, nearest) = (0f, 0f, 0f);
        foreach (var corner in corners)
            (lowest, highest, nearest) = (Math.Min(lowest, corner.Y), Math.Max(highest, corner.Y),
                Math.Min(nearest, corner.Z));
        (_bottom, _height) = _repeatsUpwards ? (0, scene.Cell.Across)
            : (lowest - pixel, highest - lowest + (2 * pixel));
        (_columns, _rows) = (Math.Max(1, (int)Math.Round(_width / pixel)),
            Math.Max(1, (int)Math.Ceiling(_height / pixel)));
        if (!_repeatsUpwards) _height = _rows * pixel;
        var toOrigin = new Vector3(0, -(float)_bottom, -nearest);
        var turned = new Scene
        {
            Cell = new Cell(_width, _height),
            Corners = Array.ConvertAll(corners, corner => corner + toOrigin),
            SurfaceOfTriangle = [.. scene.SurfaceOfTriangle.Where((_, triangle) => isSeen[triangle])],
            Kinds = scene.Kinds,
            LeafIds = scene.LeafIds,
        };
        var mesh = new LightMesh(turned);
        var scratch = new SunRaster.Scratch();
        scratch.Draw(mesh, ProjectedGrid.Overhead(turned.Cell, _columns, _rows));
        (_surfaces, _brightness) = (new int[_columns * _rows], new float[_columns * _rows]);
        for (var at = 0; at < _surfaces.Length; at++)
        {
            var facet = scratch.Owners[at];
            _surfaces[at] = facet < 0 ? -1 : (int)(mesh.Faces[facet] / 2);
            if (facet >= 0) _brightness[at] = (float)BrightnessOf(mesh, facet);
        }
    }

    /// <summary>Looks at the scene of a season.</summary>
    /// <param name="scene">The periodic cell.</param>
    /// <param name="side">From where.</param>
    /// <param name="pixel">Width of a pixel [m].</param>
    public static CanopyView Of(Scene scene, ViewSide side, double pixel)
    {
        if (!(pixel > 0)) throw new ArgumentOutOfRangeException(nameof(pixel), pixel, "a width above 0 m");
        return new CanopyView(scene, side, pixel);
    }

    /// <summary>The surface seen at a place, −1 for none.</summary>
    /// <param name="right">Along the row, or from the row's middle to its right when looking along it [m].</param>
    /// <param name="up">Over the ground; seen from above, from the row's middle to its left [m].</param>
    /// <param name="brightness">How brightly it is lit, 0 to 1.</param>
    public int SurfaceAt(double right, double up, out double brightness)
    {
        brightness = 0;
        var row = Math.Floor((up - _bottom) / _height * _rows);
        if (_repeatsUpwards) row -= _rows * Math.Floor(row / _rows);
        else if (row < 0 || row >= _rows) return -1;
        var column = Math.Floor(right / _width * _columns);
        column -= _columns * Math.Floor(column / _columns);
        var at = ((int)row * _columns) + (int)column;
        brightness = _brightness[at];
        return _surfaces[at];
    }

    /// <summary>Height of a point over the ground below it [m].</summary>
    internal static double HeightOver(in Cell cell, Vector3 point) =>
        point.Z - (cell.RiseAcross * point.X) - (cell.RiseAlong * point.Y);

    // Right, up and towards the viewer, a turn without mirroring.
    private static Vector3 Turned(in Cell cell, Vector3 point, ViewSide side)
    {
        var height = (float)HeightOver(cell, point);
        return side switch
        {
            ViewSide.Front => new Vector3(point.Y, height, point.X),
            ViewSide.Along => new Vector3(point.X, height, -point.Y),
            ViewSide.Above => new Vector3(point.Y, -point.X, height),
            _ => throw new ArgumentOutOfRangeException(nameof(side), side, "no such side"),
        };
    }

    private static double BrightnessOf(LightMesh mesh, int facet)
    {
        var first = (((LightMesh.Values * (facet / LightMesh.Lanes)) + LightMesh.NormalAt) * LightMesh.Lanes)
            + (facet % LightMesh.Lanes);
        var normal = new Vector3(mesh.Numbers[first], mesh.Numbers[first + LightMesh.Lanes],
            mesh.Numbers[first + (2 * LightMesh.Lanes)]);
        if (normal.Z < 0) normal = -normal;
        var length = normal.Length();
        return length > 0 ? Ambient + ((1 - Ambient) * Math.Max(0, Vector3.Dot(normal, Lamp) / length)) : Ambient;
    }
}
