using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>
/// Projects a mesh along one direction and hands out the pixels whose sample points each facet covers, wrapped into the cell.
/// A facet's row lies between the nearest of its edges that go up and the nearest of those that go down. Edges are walked from
/// their lower to their upper end, so two facets that share an edge compute the same columns and a pixel between them belongs
/// to exactly one. Eight facets are set up at a time, then eight rows of each: facets of a few pixels cost their branches, not
/// their arithmetic.
/// </summary>
internal static class FacetRaster
{
    private const int Lanes = LightMesh.Lanes;

    /// <param name="mesh">Facets.</param>
    /// <param name="grid">Pixels and direction.</param>
    /// <param name="columnOffset">Where in its pixel the sample point lies, 0 to 1.</param>
    /// <param name="rowOffset">The same along the row.</param>
    /// <param name="target">Receives the rows, in the order of the mesh.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Draw<TRows>(LightMesh mesh, in ProjectedGrid grid, float columnOffset, float rowOffset, ref TRows target)
        where TRows : struct, IFacetRows
    {
        Unsafe.SkipInit(out FacetBlock block);
        Unsafe.SkipInit(out FacetRows rows);
        for (var first = 0; first < mesh.Count; first += Lanes)
        {
            block.Project(mesh, first, grid, columnOffset, rowOffset);
            for (var lanes = block.WithRows; lanes != 0; lanes &= lanes - 1)
            {
                var lane = BitOperations.TrailingZeroCount(lanes);
                rows.Place = first + lane;
                rows.Slope = block.AlongColumn[lane];
                rows.Lowest = block.Lowest[lane];
                rows.Highest = block.Highest[lane];
                rows.UpperSeesLight = block.UpperSeesLight[lane];
                DrawRows(block, lane, grid.Width, grid.Height, ref rows, ref target);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void DrawRows<TRows>(in FacetBlock block, int lane, int gridWidth, int gridHeight, ref FacetRows rows, ref TRows target)
        where TRows : struct, IFacetRows
    {
        var end = Vector256.Create(block.EndRow[lane]);
        var (width, height) = (Vector256.Create((float)gridWidth), Vector256.Create((float)gridHeight));
        for (var firstRow = block.FirstRow[lane]; firstRow < block.EndRow[lane]; firstRow += Lanes)
        {
            var row = Vector256.Create(firstRow) + Vector256<float>.Indices;
            var (from, to) = block.Columns(lane, row);
            var column = Vector256.Ceiling(from);
            var count = Vector256.Ceiling(to) - column;
            var covered = Vector256.GreaterThan(count, Vector256<float>.Zero) & Vector256.LessThan(row, end);
            var bits = covered.ExtractMostSignificantBits();
            if (bits == 0) continue;

            // Division is rounded correctly, so a whole multiple of the size wraps to exactly 0.
            var wrappedColumn = column - (width * Vector256.Floor(column / width));
            var wrappedRow = row - (height * Vector256.Floor(row / height));
            var z = Vector256.Create(block.Height[lane])
                + ((column - Vector256.Create(block.OriginU[lane])) * block.AlongColumn[lane])
                + ((row - Vector256.Create(block.OriginV[lane])) * block.AlongRow[lane]);
            var rowStart = Vector256.ConvertToInt32Native(wrappedRow) * gridWidth;
            rows.Pixel.Set(rowStart + Vector256.ConvertToInt32Native(wrappedColumn));
            rows.Height.Set(z);

            // A run that leaves the cell goes on at the start of its row.
            var room = width - wrappedColumn;
            while (true)
            {
                var part = Vector256.MinNative(count, room);
                rows.Count.Set(Vector256.ConvertToInt32Native(part));
                target.Add(rows, bits);
                count -= part;
                bits = (Vector256.GreaterThan(count, Vector256<float>.Zero) & covered).ExtractMostSignificantBits();
                if (bits == 0) break;
                z += part * block.AlongColumn[lane];
                rows.Height.Set(z);
                rows.Pixel.Set(rowStart);
                room = width;
            }
        }
    }
}
