using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>Eight facets projected, in pixel units: u along columns, v along rows.</summary>
internal struct FacetBlock
{
    private const int Lanes = LightMesh.Lanes;
    private const int Edges = FacetList.MaximumCorners;

    public EightReal FirstRow, EndRow, Height, OriginU, OriginV, AlongColumn, AlongRow;

    private FiveEdges _edges;

    /// <summary>A bit for each facet that may cover a pixel.</summary>
    public uint WithRows { get; private set; }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Project(LightMesh mesh, int first, in ProjectedGrid grid, float columnOffset, float rowOffset, FacetRows rows)
    {
        ref var number = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(mesh.Numbers), LightMesh.Values * first);
        var (shiftAcross, shiftAlong) = ((float)grid.ShiftAcross, (float)grid.ShiftAlong);
        var (columnsPerMeter, rowsPerMeter) = ((float)grid.ColumnsPerMeter, (float)grid.RowsPerMeter);
        var (normalX, normalY) = (Load(ref number, LightMesh.NormalAt), Load(ref number, LightMesh.NormalAt + 1));

        // Twice the projected area: positive where the upper side looks along the direction, and corners run counterclockwise.
        var facing = (normalX * shiftAcross) + (normalY * shiftAlong) + Load(ref number, LightMesh.NormalAt + 2);
        var upper = Vector256.GreaterThan(facing, Vector256<float>.Zero);
        var alongColumn = -normalX / (facing * columnsPerMeter);
        rows.SetFacets(first, alongColumn, upper.AsInt32() & Vector256<int>.One);
        AlongColumn.Set(alongColumn);
        AlongRow.Set(-normalY / (facing * rowsPerMeter));
        var height = Load(ref number, 2);
        var firstU = ((Load(ref number, 0) - (height * shiftAcross)) * columnsPerMeter) - Vector256.Create(columnOffset);
        var firstV = ((Load(ref number, 1) - (height * shiftAlong)) * rowsPerMeter) - Vector256.Create(rowOffset);
        Height.Set(height);
        OriginU.Set(firstU);
        OriginV.Set(firstV);
        var (u, v, bottom, top) = (firstU, firstV, firstV, firstV);
        for (var corner = 1; corner < Edges; corner++)
        {
            var z = Load(ref number, (3 * corner) + 2);
            var nextU = ((Load(ref number, 3 * corner) - (z * shiftAcross)) * columnsPerMeter) - Vector256.Create(columnOffset);
            var nextV = ((Load(ref number, (3 * corner) + 1) - (z * shiftAlong)) * rowsPerMeter) - Vector256.Create(rowOffset);
            _edges[corner - 1].Set(u, v, nextU, nextV, upper);
            (bottom, top) = (Vector256.MinNative(bottom, nextV), Vector256.MaxNative(top, nextV));
            (u, v) = (nextU, nextV);
        }

        _edges[Edges - 1].Set(u, v, firstU, firstV, upper);
        var (firstRow, endRow) = (Vector256.Ceiling(bottom), Vector256.Ceiling(top));
        FirstRow.Set(firstRow);
        EndRow.Set(endRow);
        WithRows = (Vector256.LessThan(firstRow, endRow)
            & ~Vector256.Equals(facing, Vector256<float>.Zero)
            & Vector256.GreaterThanOrEqual(Load(ref number, LightMesh.HighestAt), Vector256<float>.Zero)).ExtractMostSignificantBits();
    }

    /// <summary>Where rows of a facet enter and leave it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly (Vector256<float> From, Vector256<float> To) Columns(int lane, Vector256<float> row)
    {
        var (from, to) = (Vector256.Create(float.NegativeInfinity), Vector256.Create(float.PositiveInfinity));
        _edges[0].Bound(lane, row, ref from, ref to);
        _edges[1].Bound(lane, row, ref from, ref to);
        _edges[2].Bound(lane, row, ref from, ref to);
        _edges[3].Bound(lane, row, ref from, ref to);
        _edges[4].Bound(lane, row, ref from, ref to);
        return (from, to);
    }

    private static Vector256<float> Load(ref float number, int value) => Vector256.LoadUnsafe(ref Unsafe.Add(ref number, value * Lanes));

    [InlineArray(Edges)]
    private struct FiveEdges
    {
        private Edge _first;
    }

    // An edge bounds its rows on one side; on the other its column lies infinitely far off. A level one bounds none.
    private struct Edge
    {
        private EightReal _from, _to, _base, _slope;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Set(Vector256<float> u0, Vector256<float> v0, Vector256<float> u1, Vector256<float> v1, Vector256<float> upper)
        {
            var rises = Vector256.GreaterThan(v1, v0);
            var level = Vector256.Equals(v1, v0);
            var lowU = Vector256.ConditionalSelect(rises, u0, u1);
            var right = Vector256.Equals(rises.AsInt32(), upper.AsInt32()).AsSingle();
            _from.Set(Vector256.ConditionalSelect(right | level, Vector256.Create(float.NegativeInfinity), lowU));
            _to.Set(Vector256.ConditionalSelect(Vector256.AndNot(right, level), lowU, Vector256.Create(float.PositiveInfinity)));
            _base.Set(Vector256.MinNative(v0, v1));
            _slope.Set(Vector256.ConditionalSelect(level, Vector256<float>.Zero, (u1 - u0) / (v1 - v0)));
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public readonly void Bound(int lane, Vector256<float> row, ref Vector256<float> from, ref Vector256<float> to)
        {
            var above = row - Vector256.Create(_base[lane]);
            var slope = Vector256.Create(_slope[lane]);
            from = Vector256.MaxNative(from, Vector256.FusedMultiplyAdd(above, slope, Vector256.Create(_from[lane])));
            to = Vector256.MinNative(to, Vector256.FusedMultiplyAdd(above, slope, Vector256.Create(_to[lane])));
        }
    }
}
