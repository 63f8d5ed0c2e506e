using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace CanopySim.Light;

/// <summary>Takes the runs of pixels that a triangle covers.</summary>
internal interface IPixelRuns
{
    /// <param name="place">Place of the triangle in the mesh.</param>
    /// <param name="upperSeesLight">Whether its upper or outer side faces the light.</param>
    /// <param name="pixel">First pixel; the run lies in one row.</param>
    /// <param name="count">Pixels in the run.</param>
    /// <param name="height">Height above the slope at the first pixel [m].</param>
    /// <param name="slope">Change of height from pixel to pixel [m].</param>
    /// <param name="lowest">Lowest height of the triangle [m], against the overshoot of slivers.</param>
    /// <param name="highest">Its highest [m].</param>
    void Add(int place, bool upperSeesLight, int pixel, int count, float height, float slope, float lowest, float highest);
}

/// <summary>
/// Projects a mesh along one direction and hands out the pixels whose centers each triangle covers, wrapped into the cell.
/// Edges are walked from their lower to their upper end, so two triangles that share an edge compute the same columns and a
/// pixel between them belongs to exactly one.
/// </summary>
internal static class TriangleRaster
{
    /// <param name="mesh">Triangles.</param>
    /// <param name="grid">Pixels and direction.</param>
    /// <param name="columnOffset">Where in its pixel the sample point lies, 0 to 1.</param>
    /// <param name="rowOffset">The same along the row.</param>
    /// <param name="runs">Receives the runs.</param>
    public static void Draw<TRuns>(LightMesh mesh, in ProjectedGrid grid, float columnOffset, float rowOffset, ref TRuns runs)
        where TRuns : struct, IPixelRuns
    {
        var (shiftAcross, shiftAlong) = ((float)grid.ShiftAcross, (float)grid.ShiftAlong);
        var (columns, rows) = ((float)grid.ColumnsPerMeter, (float)grid.RowsPerMeter);
        ref var corner = ref MemoryMarshal.GetArrayDataReference(mesh.Corners);
        for (var place = 0; place < mesh.Count; place++, corner = ref Unsafe.Add(ref corner, 9))
        {
            var (z0, z1, z2) = (Unsafe.Add(ref corner, 2), Unsafe.Add(ref corner, 5), Unsafe.Add(ref corner, 8));
            var v0 = ((Unsafe.Add(ref corner, 1) - (shiftAlong * z0)) * rows) - rowOffset;
            var v1 = ((Unsafe.Add(ref corner, 4) - (shiftAlong * z1)) * rows) - rowOffset;
            var v2 = ((Unsafe.Add(ref corner, 7) - (shiftAlong * z2)) * rows) - rowOffset;
            var firstRow = (int)MathF.Ceiling(MathF.Min(v0, MathF.Min(v1, v2)));
            var endRow = (int)MathF.Ceiling(MathF.Max(v0, MathF.Max(v1, v2)));
            var highest = MathF.Max(z0, MathF.Max(z1, z2));
            if (firstRow >= endRow || highest < 0) continue;
            var u0 = ((corner - (shiftAcross * z0)) * columns) - columnOffset;
            var u1 = ((Unsafe.Add(ref corner, 3) - (shiftAcross * z1)) * columns) - columnOffset;
            var u2 = ((Unsafe.Add(ref corner, 6) - (shiftAcross * z2)) * columns) - columnOffset;
            var twiceArea = ((u1 - u0) * (v2 - v0)) - ((u2 - u0) * (v1 - v0));
            if (twiceArea == 0) continue;
            var alongColumn = (((z1 - z0) * (v2 - v0)) - ((z2 - z0) * (v1 - v0))) / twiceArea;
            var alongRow = (((z2 - z0) * (u1 - u0)) - ((z1 - z0) * (u2 - u0))) / twiceArea;
            var lowest = MathF.Min(z0, MathF.Min(z1, z2));
            var (originU, originV) = (u0, v0);

            // Sort corners by row.
            if (v1 < v0) (u0, v0, u1, v1) = (u1, v1, u0, v0);
            if (v2 < v0) (u0, v0, u2, v2) = (u2, v2, u0, v0);
            if (v2 < v1) (u1, v1, u2, v2) = (u2, v2, u1, v1);
            var longSlope = (u2 - u0) / (v2 - v0);
            var lowerSlope = (u1 - u0) / (v1 - v0);
            var upperSlope = (u2 - u1) / (v2 - v1);
            var wrappedRow = Wrap(firstRow, grid.Height);
            for (var row = firstRow; row < endRow; row++)
            {
                var a = u0 + ((row - v0) * longSlope);
                var b = row < v1 ? u0 + ((row - v0) * lowerSlope) : u1 + ((row - v1) * upperSlope);
                var first = (int)MathF.Ceiling(MathF.Min(a, b));
                var remaining = (int)MathF.Ceiling(MathF.Max(a, b)) - first;
                if (remaining > 0)
                {
                    var height = z0 + ((first - originU) * alongColumn) + ((row - originV) * alongRow);
                    var column = Wrap(first, grid.Width);
                    var rowStart = wrappedRow * grid.Width;
                    while (true)
                    {
                        var count = Math.Min(remaining, grid.Width - column);
                        runs.Add(place, twiceArea > 0, rowStart + column, count, height, alongColumn, lowest, highest);
                        remaining -= count;
                        if (remaining == 0) break;
                        height += count * alongColumn;
                        column = 0;
                    }
                }

                if (++wrappedRow == grid.Height) wrappedRow = 0;
            }
        }
    }

    private static int Wrap(int index, int size)
    {
        if ((uint)index < (uint)size) return index;
        var rest = index % size;
        return rest < 0 ? rest + size : rest;
    }
}
