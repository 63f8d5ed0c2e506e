using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>
/// Projects a mesh along one direction and hands out the pixels whose sample points each facet covers, wrapped into the cell.
/// A facet's row lies between the nearest of its edges that go up and the nearest of those that go down. Edges are walked from
/// their lower to their upper end, so two facets that share an edge compute the same columns and a pixel between them belongs
/// to exactly one. Eight facets go side by side, row after row, until the tallest is done: those of a few pixels would cost more
/// in branches than in arithmetic. One worker's; here and elsewhere in Light/ the loops that a season runs millions of times are compiled once
/// and well: run slow first and made fast later they cost a draft half its time.
/// </summary>
internal sealed class FacetRaster
{
    private const int Lanes = LightMesh.Lanes;

    private readonly FacetRows _rows = new();

    /// <param name="mesh">Facets.</param>
    /// <param name="grid">Pixels and direction.</param>
    /// <param name="columnOffset">Where in its pixel the sample point lies, 0 to 1.</param>
    /// <param name="rowOffset">The same along the row.</param>
    /// <param name="target">Takes the runs, in the order of the mesh.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Draw<TTarget>(LightMesh mesh, in ProjectedGrid grid, float columnOffset, float rowOffset, TTarget target)
        where TTarget : class, IFacetTarget
    {
        Unsafe.SkipInit(out FacetBlock block);
        _rows.Begin(mesh.Count);
        for (var first = 0; first < mesh.Count; first += Lanes)
        {
            block.Project(mesh, first, grid, columnOffset, rowOffset, _rows);
            if (block.HasRows) DrawRows(block, first, grid.Width, grid.Height, target);
        }

        target.Take(_rows);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void DrawRows<TTarget>(in FacetBlock block, int first, int gridWidth, int gridHeight, TTarget target)
        where TTarget : class, IFacetTarget
    {
        var (width, height) = (Vector256.Create((float)gridWidth), Vector256.Create((float)gridHeight));
        var row = block.FirstRow;
        var inside = Vector256.LessThan(row, block.EndRow);
        do
        {
            var (from, to) = block.Columns(row);
            var column = Vector256.Ceiling(from);
            var count = Vector256.Ceiling(to) - column;
            var covered = Vector256.GreaterThan(count, Vector256<float>.Zero) & inside;
            var bits = covered.ExtractMostSignificantBits();

            // Division is rounded correctly, so a whole multiple of the size wraps to exactly 0.
            var wrappedColumn = column - (width * Vector256.Floor(column / width));
            var wrappedRow = row - (height * Vector256.Floor(row / height));
            var z = block.HeightAt(column, row);
            var rowStart = Vector256.ConvertToInt32Native(wrappedRow) * gridWidth;
            var pixel = rowStart + Vector256.ConvertToInt32Native(wrappedColumn);

            // A run that leaves the cell goes on at the start of its row.
            var room = width - wrappedColumn;
            while (true)
            {
                var part = Vector256.MinNative(count, room);
                if (_rows.IsFull)
                {
                    target.Take(_rows);
                    _rows.Clear();
                }

                _rows.Add(first, pixel, Vector256.ConvertToInt32Native(part), z, bits);
                count -= part;
                bits = (Vector256.GreaterThan(count, Vector256<float>.Zero) & covered).ExtractMostSignificantBits();
                if (bits == 0) break;
                z += part * block.AlongColumn;
                pixel = rowStart;
                room = width;
            }

            row += Vector256<float>.One;
            inside = Vector256.LessThan(row, block.EndRow);
        }
        while (inside.ExtractMostSignificantBits() != 0);
    }
}
