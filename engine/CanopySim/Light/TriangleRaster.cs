using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>
/// Projects a mesh along one direction and hands out the pixels whose sample points each triangle covers, wrapped into the
/// cell. Edges are walked from their lower to their upper end, so two triangles that share an edge compute the same columns
/// and a pixel between them belongs to exactly one. Eight triangles are set up at a time, then eight rows of each: triangles
/// of a few pixels cost their branches, not their arithmetic.
/// </summary>
internal sealed class TriangleRaster
{
    private const int Lanes = LightMesh.Lanes;

    private PixelRun[] _runs = new PixelRun[1 << 10];
    private int _count;

    /// <param name="mesh">Triangles.</param>
    /// <param name="grid">Pixels and direction.</param>
    /// <param name="columnOffset">Where in its pixel the sample point lies, 0 to 1.</param>
    /// <param name="rowOffset">The same along the row.</param>
    /// <param name="target">Receives the runs, in the order of the mesh.</param>
    public void Draw<TRuns>(LightMesh mesh, in ProjectedGrid grid, float columnOffset, float rowOffset, TRuns target)
        where TRuns : IPixelRuns
    {
        Unsafe.SkipInit(out Block block);
        for (var first = 0; first < mesh.Count; first += Lanes)
        {
            block.Project(mesh, first, grid, columnOffset, rowOffset);
            _count = 0;
            for (var lane = 0; lane < Lanes; lane++)
            {
                if (block.FirstRow[lane] < block.EndRow[lane]) DrawRows(block, lane, first + lane, grid);
            }

            if (_count > 0) target.Add(_runs.AsSpan(0, _count));
        }
    }

    private void DrawRows(in Block block, int lane, int place, in ProjectedGrid grid)
    {
        var (u0, v0, u1, v1) = (block.LowU[lane], block.LowV[lane], block.MiddleU[lane], block.MiddleV[lane]);
        var (longSlope, lowSlope, highSlope) = (block.LongSlope[lane], block.LowSlope[lane], block.HighSlope[lane]);
        var end = Vector256.Create(block.EndRow[lane]);
        var (width, height) = (Vector256.Create((float)grid.Width), Vector256.Create((float)grid.Height));
        for (var firstRow = block.FirstRow[lane]; firstRow < block.EndRow[lane]; firstRow += Lanes)
        {
            var row = Vector256.Create(firstRow) + Vector256<float>.Indices;
            var a = Vector256.Create(u0) + ((row - Vector256.Create(v0)) * longSlope);
            var b = Vector256.ConditionalSelect(
                Vector256.LessThan(row, Vector256.Create(v1)),
                Vector256.Create(u0) + ((row - Vector256.Create(v0)) * lowSlope),
                Vector256.Create(u1) + ((row - Vector256.Create(v1)) * highSlope));
            var column = Vector256.Ceiling(Vector256.MinNative(a, b));
            var count = Vector256.Ceiling(Vector256.MaxNative(a, b)) - column;
            var covered = Vector256.GreaterThan(count, Vector256<float>.Zero) & Vector256.LessThan(row, end);
            var bits = covered.ExtractMostSignificantBits();
            if (bits == 0) continue;

            // Division is rounded correctly, so a whole multiple of the size wraps to exactly 0.
            var wrappedColumn = column - (width * Vector256.Floor(column / width));
            var wrappedRow = row - (height * Vector256.Floor(row / height));
            var z = Vector256.Create(block.Height[lane])
                + ((column - Vector256.Create(block.OriginU[lane])) * block.AlongColumn[lane])
                + ((row - Vector256.Create(block.OriginV[lane])) * block.AlongRow[lane]);
            var pixel = (Vector256.ConvertToInt32Native(wrappedRow) * grid.Width) + Vector256.ConvertToInt32Native(wrappedColumn);
            var counts = Vector256.ConvertToInt32Native(count);
            var over = Vector256.GreaterThan(wrappedColumn + count, width) & covered;
            if (_count + Lanes > _runs.Length) Array.Resize(ref _runs, 2 * _runs.Length);
            var wraps = over.ExtractMostSignificantBits() != 0;
            var rows = new Rows(pixel, counts, z);
            for (; bits != 0; bits &= bits - 1)
            {
                var at = BitOperations.TrailingZeroCount(bits);
                ref var run = ref _runs[_count++];
                run.Pixel = rows.Pixel[at];
                run.Count = rows.Count[at];
                run.Height = rows.Height[at];
                run.Slope = block.AlongColumn[lane];
                run.Lowest = block.Lowest[lane];
                run.Highest = block.Highest[lane];
                run.Place = place;
                run.UpperSeesLight = block.UpperSeesLight[lane];
                if (wraps) SplitLast(grid.Width);
            }
        }
    }

    // A run that leaves the cell goes on at the start of its row.
    private void SplitLast(int width)
    {
        while (true)
        {
            var run = _runs[_count - 1];
            var rowStart = run.Pixel / width * width;
            var part = rowStart + width - run.Pixel;
            if (run.Count <= part) return;
            _runs[_count - 1].Count = part;
            if (_count + Lanes > _runs.Length) Array.Resize(ref _runs, 2 * _runs.Length);
            run.Pixel = rowStart;
            run.Count -= part;
            run.Height += part * run.Slope;
            _runs[_count++] = run;
        }
    }

    [InlineArray(Lanes)]
    private struct EightReal
    {
        private float _first;

        public void Set(Vector256<float> values) => values.StoreUnsafe(ref _first);
    }

    [InlineArray(Lanes)]
    private struct EightWhole
    {
        private int _first;

        public void Set(Vector256<int> values) => values.StoreUnsafe(ref _first);
    }

    private struct Rows
    {
        public EightWhole Pixel, Count;
        public EightReal Height;

        public Rows(Vector256<int> pixel, Vector256<int> count, Vector256<float> height)
        {
            Pixel.Set(pixel);
            Count.Set(count);
            Height.Set(height);
        }
    }

    /// <summary>Eight triangles in pixel units: u along columns, v along rows, corners sorted by v.</summary>
    private struct Block
    {
        public EightReal FirstRow, EndRow, LowU, LowV, MiddleU, MiddleV, LongSlope, LowSlope, HighSlope;
        public EightReal Height, OriginU, OriginV, AlongColumn, AlongRow, Lowest, Highest;
        public EightWhole UpperSeesLight;

        public void Project(LightMesh mesh, int first, in ProjectedGrid grid, float columnOffset, float rowOffset)
        {
            ref var corner = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(mesh.Corners), 9 * first);
            var (shiftAcross, shiftAlong) = ((float)grid.ShiftAcross, (float)grid.ShiftAlong);
            var (columns, rows) = ((float)grid.ColumnsPerMeter, (float)grid.RowsPerMeter);
            var (z0, z1, z2) = (Load(ref corner, 2), Load(ref corner, 5), Load(ref corner, 8));
            var u0 = ((Load(ref corner, 0) - (z0 * shiftAcross)) * columns) - Vector256.Create(columnOffset);
            var u1 = ((Load(ref corner, 3) - (z1 * shiftAcross)) * columns) - Vector256.Create(columnOffset);
            var u2 = ((Load(ref corner, 6) - (z2 * shiftAcross)) * columns) - Vector256.Create(columnOffset);
            var v0 = ((Load(ref corner, 1) - (z0 * shiftAlong)) * rows) - Vector256.Create(rowOffset);
            var v1 = ((Load(ref corner, 4) - (z1 * shiftAlong)) * rows) - Vector256.Create(rowOffset);
            var v2 = ((Load(ref corner, 7) - (z2 * shiftAlong)) * rows) - Vector256.Create(rowOffset);
            var twiceArea = ((u1 - u0) * (v2 - v0)) - ((u2 - u0) * (v1 - v0));
            AlongColumn.Set((((z1 - z0) * (v2 - v0)) - ((z2 - z0) * (v1 - v0))) / twiceArea);
            AlongRow.Set((((z2 - z0) * (u1 - u0)) - ((z1 - z0) * (u2 - u0))) / twiceArea);
            Height.Set(z0);
            OriginU.Set(u0);
            OriginV.Set(v0);
            var highest = Vector256.MaxNative(z0, Vector256.MaxNative(z1, z2));
            Highest.Set(highest);
            Lowest.Set(Vector256.MinNative(z0, Vector256.MinNative(z1, z2)));
            UpperSeesLight.Set(Vector256.GreaterThan(twiceArea, Vector256<float>.Zero).AsInt32() & Vector256<int>.One);

            Order(ref u0, ref v0, ref u1, ref v1);
            Order(ref u0, ref v0, ref u2, ref v2);
            Order(ref u1, ref v1, ref u2, ref v2);
            var firstRow = Vector256.Ceiling(v0);
            var empty = Vector256.Equals(twiceArea, Vector256<float>.Zero) | Vector256.LessThan(highest, Vector256<float>.Zero);
            FirstRow.Set(firstRow);
            EndRow.Set(Vector256.ConditionalSelect(empty, firstRow, Vector256.Ceiling(v2)));
            LowU.Set(u0);
            LowV.Set(v0);
            MiddleU.Set(u1);
            MiddleV.Set(v1);
            LongSlope.Set((u2 - u0) / (v2 - v0));
            LowSlope.Set((u1 - u0) / (v1 - v0));
            HighSlope.Set((u2 - u1) / (v2 - v1));
        }

        private static Vector256<float> Load(ref float corner, int value) =>
            Vector256.LoadUnsafe(ref Unsafe.Add(ref corner, value * Lanes));

        private static void Order(ref Vector256<float> u0, ref Vector256<float> v0, ref Vector256<float> u1, ref Vector256<float> v1)
        {
            var swap = Vector256.LessThan(v1, v0);
            (u0, u1) = (Vector256.ConditionalSelect(swap, u1, u0), Vector256.ConditionalSelect(swap, u0, u1));
            (v0, v1) = (Vector256.ConditionalSelect(swap, v1, v0), Vector256.ConditionalSelect(swap, v0, v1));
        }
    }
}
