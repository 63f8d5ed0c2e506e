using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>
/// Runs of pixels that facets cover, as they are drawn, in flat lists: whoever takes them loops over hundreds at a time, not over
/// the few of each facet. Facets come by blocks of eight in the order of the mesh, within a block row after row. One worker's,
/// emptied whenever full.
/// </summary>
internal sealed class FacetRows
{
    /// <summary>So many stay in the first-level cache.</summary>
    public const int Capacity = 1024;

    private const int Lanes = LightMesh.Lanes;

    // For each pattern of eight bits the lanes that are set, in order.
    private static readonly int[] SetLanes = LanesOfPatterns();

    private readonly int[] _pixels = new int[Capacity + Lanes];
    private readonly int[] _lengths = new int[Capacity + Lanes];
    private readonly int[] _places = new int[Capacity + Lanes];
    private readonly float[] _heights = new float[Capacity + Lanes];
    private float[] _slopes = [];
    private int[] _upperSeesLight = [];

    public int Count { get; private set; }

    /// <summary>Whether another eight may not fit.</summary>
    public bool IsFull => Count > Capacity - Lanes;

    /// <summary>The first pixel of each run.</summary>
    public ReadOnlySpan<int> Pixels => _pixels.AsSpan(0, Count);

    /// <summary>Its pixels, in one row.</summary>
    public ReadOnlySpan<int> Lengths => _lengths.AsSpan(0, Count);

    /// <summary>Its facet's place in the mesh.</summary>
    public ReadOnlySpan<int> Places => _places.AsSpan(0, Count);

    /// <summary>Height above the slope at its first pixel [m].</summary>
    public ReadOnlySpan<float> Heights => _heights.AsSpan(0, Count);

    /// <summary>Change of a facet's height from pixel to pixel [m], by its place.</summary>
    public ReadOnlySpan<float> Slopes => _slopes;

    /// <summary>1 where a facet's upper or outer side faces the light, else 0, by its place.</summary>
    public ReadOnlySpan<int> UpperSeesLight => _upperSeesLight;

    public void Clear() => Count = 0;

    /// <summary>Makes room for a mesh's facets.</summary>
    public void Begin(int facets)
    {
        Clear();
        var room = (facets + Lanes - 1) / Lanes * Lanes;
        if (_slopes.Length < room) (_slopes, _upperSeesLight) = (new float[room], new int[room]);
    }

    public void SetFacets(int first, Vector256<float> slopes, Vector256<int> upperSeesLight)
    {
        slopes.StoreUnsafe(ref _slopes[first]);
        upperSeesLight.StoreUnsafe(ref _upperSeesLight[first]);
    }

    /// <summary>Adds a run of each of eight facets from a place on; a bit for each that has one.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(int first, Vector256<int> pixels, Vector256<int> lengths, Vector256<float> heights, uint covered)
    {
        var lanes = Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(SetLanes), covered * Lanes);
        var at = (nuint)Count;
        Vector256.ShuffleNative(pixels, lanes).StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(_pixels), at);
        Vector256.ShuffleNative(lengths, lanes).StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(_lengths), at);
        Vector256.ShuffleNative(heights, lanes).StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(_heights), at);
        (lanes + Vector256.Create(first)).StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(_places), at);
        Count += System.Numerics.BitOperations.PopCount(covered);
    }

    private static int[] LanesOfPatterns()
    {
        var lanes = new int[256 * Lanes];
        for (var pattern = 0; pattern < 256; pattern++)
        {
            var next = pattern * Lanes;
            for (var lane = 0; lane < Lanes; lane++)
                if ((pattern >> lane & 1) == 1) lanes[next++] = lane;
        }

        return lanes;
    }
}

/// <summary>Takes runs of pixels as facets are drawn.</summary>
internal interface IFacetTarget
{
    void Take(FacetRows rows);
}
