using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>Eight facets projected, a lane each, in pixel units: u along columns, v along rows.</summary>
internal struct FacetBlock
{
    private const int Lanes = LightMesh.Lanes;
    public Vector256<float> FirstRow, EndRow, AlongColumn;

    private Vector256<float> _height, _originU, _originV, _alongRow;
    private FiveEdges _edges;
    private int _edgeCount;

    /// <summary>Whether any of the eight may cover a pixel.</summary>
    public bool HasRows { get; private set; }

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
        AlongColumn = -normalX / (facing * columnsPerMeter);
        _alongRow = -normalY / (facing * rowsPerMeter);
        rows.SetFacets(first, AlongColumn, upper.AsInt32() & Vector256<int>.One);

        _height = Load(ref number, 2);
        _originU = ((Load(ref number, 0) - (_height * shiftAcross)) * columnsPerMeter) - Vector256.Create(columnOffset);
        _originV = ((Load(ref number, 1) - (_height * shiftAlong)) * rowsPerMeter) - Vector256.Create(rowOffset);
        _edgeCount = mesh.EdgesOfBlock[first / Lanes];
        var (u, v, bottom, top) = (_originU, _originV, _originV, _originV);
        for (var corner = 1; corner < _edgeCount; corner++)
        {
            var z = Load(ref number, (3 * corner) + 2);
            var nextU = ((Load(ref number, 3 * corner) - (z * shiftAcross)) * columnsPerMeter) - Vector256.Create(columnOffset);
            var nextV = ((Load(ref number, (3 * corner) + 1) - (z * shiftAlong)) * rowsPerMeter) - Vector256.Create(rowOffset);
            _edges[corner - 1].Set(u, v, nextU, nextV, upper);
            (bottom, top) = (Vector256.MinNative(bottom, nextV), Vector256.MaxNative(top, nextV));
            (u, v) = (nextU, nextV);
        }

        _edges[_edgeCount - 1].Set(u, v, _originU, _originV, upper);
        FirstRow = Vector256.Ceiling(bottom);

        // One that is seen edge-on or lies underground has no rows.
        var seen = ~Vector256.Equals(facing, Vector256<float>.Zero)
            & Vector256.GreaterThanOrEqual(Load(ref number, LightMesh.HighestAt), Vector256<float>.Zero);
        EndRow = Vector256.ConditionalSelect(seen, Vector256.Ceiling(top), Vector256.Create(float.NegativeInfinity));
        HasRows = Vector256.LessThanAny(FirstRow, EndRow);
    }

    /// <summary>Where a row of each facet enters and leaves it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly (Vector256<float> From, Vector256<float> To) Columns(Vector256<float> row)
    {
        var (from, to) = (Vector256.Create(float.NegativeInfinity), Vector256.Create(float.PositiveInfinity));
        _edges[0].Bound(row, ref from, ref to);
        _edges[1].Bound(row, ref from, ref to);
        _edges[2].Bound(row, ref from, ref to);
        if (_edgeCount > 3) _edges[3].Bound(row, ref from, ref to);
        if (_edgeCount > 4) _edges[4].Bound(row, ref from, ref to);
        return (from, to);
    }

    /// <summary>Height above the slope at a pixel of each facet [m].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly Vector256<float> HeightAt(Vector256<float> column, Vector256<float> row) =>
        _height + ((column - _originU) * AlongColumn) + ((row - _originV) * _alongRow);

    private static Vector256<float> Load(ref float number, int value) => Vector256.LoadUnsafe(ref Unsafe.Add(ref number, value * Lanes));

    [InlineArray(FacetList.MaximumCorners)]
    private struct FiveEdges
    {
        private Edge _first;
    }

    // An edge bounds its rows on one side; on the other its column lies infinitely far off. A level one bounds none.
    private struct Edge
    {
        private Vector256<float> _from, _to, _base, _slope;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Set(Vector256<float> u0, Vector256<float> v0, Vector256<float> u1, Vector256<float> v1, Vector256<float> upper)
        {
            var rises = Vector256.GreaterThan(v1, v0);
            var level = Vector256.Equals(v1, v0);
            var lowU = Vector256.ConditionalSelect(rises, u0, u1);
            var right = Vector256.Equals(rises.AsInt32(), upper.AsInt32()).AsSingle();
            _from = Vector256.ConditionalSelect(right | level, Vector256.Create(float.NegativeInfinity), lowU);
            _to = Vector256.ConditionalSelect(Vector256.AndNot(right, level), lowU, Vector256.Create(float.PositiveInfinity));
            _base = Vector256.MinNative(v0, v1);
            _slope = Vector256.ConditionalSelect(level, Vector256<float>.Zero, (u1 - u0) / (v1 - v0));
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public readonly void Bound(Vector256<float> row, ref Vector256<float> from, ref Vector256<float> to)
        {
            var above = row - _base;
            from = Vector256.MaxNative(from, Vector256.FusedMultiplyAdd(above, _slope, _from));
            to = Vector256.MinNative(to, Vector256.FusedMultiplyAdd(above, _slope, _to));
        }
    }
}
