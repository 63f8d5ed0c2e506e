using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>Pixel, height and upward face of every piece of a facet that a pixel's sample point meets, as drawn.</summary>
internal sealed class FragmentList : IFacetTarget
{
    private const int Lanes = LightMesh.Lanes;

    private int[] _pixels = new int[1 << 15];
    private float[] _heights = new float[1 << 15];
    private uint[] _faces = new uint[1 << 15];
    private LightMesh? _mesh;

    public int Count { get; private set; }

    public ReadOnlySpan<int> Pixels => _pixels.AsSpan(0, Count);

    /// <summary>Heights above the slope [m], none below the ground.</summary>
    public ReadOnlySpan<float> Heights => _heights.AsSpan(0, Count);

    /// <summary>The face that looks up along the direction.</summary>
    public ReadOnlySpan<uint> Faces => _faces.AsSpan(0, Count);

    public void Begin(LightMesh mesh)
    {
        _mesh = mesh;
        Count = 0;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Take(FacetRows rows)
    {
        var mesh = _mesh!;
        var places = rows.Places;
        var slopes = rows.Slopes;
        var at = Count;
        for (var row = 0; row < rows.Count; row++)
        {
            var (place, length, start) = (places[row], rows.Lengths[row], at);
            if (at + length + Lanes > _pixels.Length) Grow(at + length + Lanes);
            ref var pixels = ref MemoryMarshal.GetArrayDataReference(_pixels);
            ref var zs = ref MemoryMarshal.GetArrayDataReference(_heights);
            ref var faces = ref MemoryMarshal.GetArrayDataReference(_faces);
            var face = Vector256.Create(mesh.Faces[place] | (uint)(1 - rows.UpperSeesLight[place]));
            var pixel = Vector256.Create(rows.Pixels[row]) + Vector256<int>.Indices;
            var (slope, lowest, highest) = (slopes[place], Vector256.Create(mesh.Lowest[place]), Vector256.Create(mesh.Highest[place]));
            var (z, step) = (Vector256.Create(rows.Heights[row]), Vector256<float>.Indices);

            // Eight at a time and past the end of the run: what is too much is overwritten by the next. Slivers must not overshoot.
            var end = at + length;
            while (true)
            {
                Vector256.MinNative(Vector256.MaxNative(z + (step * slope), lowest), highest).StoreUnsafe(ref zs, (nuint)at);
                pixel.StoreUnsafe(ref pixels, (nuint)at);
                face.StoreUnsafe(ref faces, (nuint)at);
                at += Lanes;
                if (at >= end) break;
                pixel += Vector256.Create(Lanes);
                step += Vector256.Create((float)Lanes);
            }

            at = end;
            if (mesh.Lowest[place] <= 0) at = DropBelowGround(start, at);
        }

        Count = at;
    }

    // Also turns a height of -0, whose bits would sort above all others, into 0.
    private int DropBelowGround(int first, int end)
    {
        var kept = first;
        for (var i = first; i < end; i++)
        {
            if (_heights[i] < 0) continue;
            (_pixels[kept], _heights[kept], _faces[kept]) = (_pixels[i], _heights[i] + 0f, _faces[i]);
            kept++;
        }

        return kept;
    }

    private void Grow(int count)
    {
        var size = Math.Max(2 * _pixels.Length, count);
        Array.Resize(ref _pixels, size);
        Array.Resize(ref _heights, size);
        Array.Resize(ref _faces, size);
    }
}
