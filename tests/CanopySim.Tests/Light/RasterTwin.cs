using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;

namespace CanopySim.Tests.Light;

/// <summary>
/// The raster once more, one facet, one row and one pixel after another: no vectors, no blocks, no runs. The same sums in the same
/// single precision, so that its counts must be equal and not just near.
/// </summary>
internal static class RasterTwin
{
    /// <summary>A facet in a pixel.</summary>
    public readonly record struct Fragment(int Pixel, float Height, int Face);

    private readonly record struct Corner(float U, float V, float Height);

    /// <summary>All fragments at or over the ground in the order of the mesh: highest facet first, each 128 by corners and area.</summary>
    public static List<Fragment> Draw(Scene scene, in ProjectedGrid grid, float columnOffset, float rowOffset)
    {
        var fragments = new List<Fragment>();
        var facets = new FacetList(scene);
        var order = Enumerable.Range(0, facets.Count).OrderByDescending(facet => Heights(facets.Corners(facet), scene.Cell).Max()).ThenBy(facet => facet)
            .Chunk(128)
            .SelectMany(few => few.OrderBy(facet => facets.Corners(facet).Length).ThenBy(facet => (float)Area(facets.Corners(facet))));
        foreach (var facet in order)
            DrawFacet(facets.Corners(facet), facets.Surfaces[facet], scene.Cell, grid, columnOffset, rowOffset, fragments);
        return fragments;
    }

    /// <summary>Pixels by face, the ground last: of two facets at one height the one drawn first is seen.</summary>
    public static long[] SunPixels(Scene scene, Vector3 sun, double pixel)
    {
        var grid = ProjectedGrid.For(scene.Cell, sun, pixel);
        var seen = new Fragment?[grid.PixelCount];
        foreach (var fragment in Draw(scene, grid, 0.5f, 0.5f))
            if (seen[fragment.Pixel] is not { } other || fragment.Height > other.Height) seen[fragment.Pixel] = fragment;
        var pixels = new long[(2 * scene.SurfaceCount) + 1];
        foreach (var fragment in seen) pixels[fragment?.Face ?? pixels.Length - 1]++;
        return pixels;
    }

    private static double Area(ReadOnlySpan<Vector3> corners)
    {
        var area = 0.0;
        for (var corner = 1; corner + 1 < corners.Length; corner++)
            area += 0.5 * Vector3.Cross(corners[corner] - corners[0], corners[corner + 1] - corners[0]).Length();
        return area;
    }

    private static float[] Heights(ReadOnlySpan<Vector3> corners, Cell cell)
    {
        var heights = new float[corners.Length];
        for (var corner = 0; corner < corners.Length; corner++)
            heights[corner] = (float)(corners[corner].Z - (cell.RiseAcross * corners[corner].X) - (cell.RiseAlong * corners[corner].Y));
        return heights;
    }

    private static void DrawFacet(
        ReadOnlySpan<Vector3> points, int surface, in Cell cell, in ProjectedGrid grid, float columnOffset, float rowOffset, List<Fragment> fragments)
    {
        var heights = Heights(points, cell);
        var (across, along) = ((float)grid.ShiftAcross, (float)grid.ShiftAlong);
        var (columns, rows) = ((float)grid.ColumnsPerMeter, (float)grid.RowsPerMeter);
        var corners = new Corner[points.Length];
        for (var i = 0; i < corners.Length; i++)
        {
            corners[i] = new Corner(
                ((points[i].X - (heights[i] * across)) * columns) - columnOffset,
                ((points[i].Y - (heights[i] * along)) * rows) - rowOffset,
                heights[i]);
        }

        var normal = Normal(points, heights);
        var facing = (normal.X * across) + (normal.Y * along) + normal.Z;
        if (facing == 0 || heights.Max() < 0) return;
        var (alongColumn, alongRow) = (-normal.X / (facing * columns), -normal.Y / (facing * rows));
        var face = (2 * surface) + (facing > 0 ? 0 : 1);
        var (firstRow, endRow) = (MathF.Ceiling(corners.Min(corner => corner.V)), MathF.Ceiling(corners.Max(corner => corner.V)));
        for (var row = firstRow; row < endRow; row++)
        {
            var (from, to) = Span(corners, row, facing > 0);
            var (column, end) = (MathF.Ceiling(from), MathF.Ceiling(to));
            if (!(end > column)) continue;
            var wrappedColumn = column - (grid.Width * MathF.Floor(column / grid.Width));
            var wrappedRow = (int)(row - (grid.Height * MathF.Floor(row / grid.Height)));
            var height = corners[0].Height + ((column - corners[0].U) * alongColumn) + ((row - corners[0].V) * alongRow);
            var (at, begin) = ((int)wrappedColumn, 0);
            for (var i = 0; i < (int)(end - column); i++, at++)
            {
                // At the cell's edge the height is carried on.
                if (at == grid.Width) (at, height, begin) = (0, height + ((i - begin) * alongColumn), i);
                var z = MathF.Min(MathF.Max(height + ((i - begin) * alongColumn), heights.Min()), heights.Max());
                if (z >= 0) fragments.Add(new Fragment((wrappedRow * grid.Width) + at, z + 0f, face));
            }
        }
    }

    // Seen from the light corners run counterclockwise where the upper side faces it: edges that rise are then on the right.
    private static (float From, float To) Span(Corner[] corners, float row, bool upper)
    {
        var (from, to) = (float.NegativeInfinity, float.PositiveInfinity);
        for (var i = 0; i < corners.Length; i++)
        {
            var (a, b) = (corners[i], corners[(i + 1) % corners.Length]);
            if (a.V == b.V) continue;
            var low = a.V < b.V ? a : b;
            var at = MathF.FusedMultiplyAdd(row - low.V, (b.U - a.U) / (b.V - a.V), low.U);
            if (b.V > a.V == upper) to = MathF.Min(to, at);
            else from = MathF.Max(from, at);
        }

        return (from, to);
    }

    // Twice the area, square to the facet in the frame of the slope: a fan of cross products, each number on its own.
    private static Vector3 Normal(ReadOnlySpan<Vector3> points, float[] heights)
    {
        var (x, y, z) = (0f, 0f, 0f);
        for (var i = 1; i + 1 < points.Length; i++)
        {
            var (ax, ay, az) = (points[i].X - points[0].X, points[i].Y - points[0].Y, heights[i] - heights[0]);
            var (bx, by, bz) = (points[i + 1].X - points[0].X, points[i + 1].Y - points[0].Y, heights[i + 1] - heights[0]);
            (x, y, z) = (x + ((ay * bz) - (az * by)), y + ((az * bx) - (ax * bz)), z + ((ax * by) - (ay * bx)));
        }

        return new Vector3(x, y, z);
    }
}
