using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>
/// Runs of pixels that a facet covers in up to eight rows. Plain fields: millions a second are written in place, and a copy on
/// the way would wait for its own stores.
/// </summary>
internal struct FacetRows
{
    /// <summary>The first pixel of each row.</summary>
    public EightWhole Pixel;

    /// <summary>How many, in one row.</summary>
    public EightWhole Count;

    /// <summary>Height above the slope at the first [m].</summary>
    public EightReal Height;

    /// <summary>Change of height from pixel to pixel [m].</summary>
    public float Slope;

    /// <summary>Lowest height of the facet [m], against the overshoot of slivers.</summary>
    public float Lowest;

    /// <summary>Its highest [m].</summary>
    public float Highest;

    /// <summary>The facet's place in the mesh.</summary>
    public int Place;

    /// <summary>1 where its upper or outer side faces the light, else 0.</summary>
    public int UpperSeesLight;

    /// <summary>Heights of eight pixels of a row, from the given one on.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly Vector256<float> Heights(int row, int pixel)
    {
        var z = Vector256.Create(Height[row]) + ((Vector256<float>.Indices + Vector256.Create((float)pixel)) * Slope);
        return Vector256.MinNative(Vector256.MaxNative(z, Vector256.Create(Lowest)), Vector256.Create(Highest));
    }
}

/// <summary>Takes rows as facets are drawn.</summary>
internal interface IFacetRows
{
    /// <param name="rows">The rows.</param>
    /// <param name="covered">A bit for each of the eight that has pixels.</param>
    void Add(in FacetRows rows, uint covered);
}

[InlineArray(8)]
internal struct EightReal
{
    private float _first;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Set(Vector256<float> values) => values.StoreUnsafe(ref _first);
}

[InlineArray(8)]
internal struct EightWhole
{
    private int _first;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Set(Vector256<int> values) => values.StoreUnsafe(ref _first);
}
