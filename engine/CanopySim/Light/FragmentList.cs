using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>Pixel, height and upward face of every piece of a facet that a pixel's sample point meets, as drawn.</summary>
internal sealed class FragmentList(uint[] faces)
{
    private const int Lanes = 8;

    public int Count { get; set; }

    public int[] Pixels { get; private set; } = new int[1 << 14];

    /// <summary>Heights above the slope [m], none below the ground.</summary>
    public float[] Heights { get; private set; } = new float[1 << 14];

    /// <summary>The face that looks up along the direction.</summary>
    public uint[] Faces { get; private set; } = new uint[1 << 14];

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Add(in FacetRows rows, uint covered)
    {
        var first = Count;
        var at = first;
        var top = Vector256.Create(faces[rows.Place] | (uint)(1 - rows.UpperSeesLight));
        for (; covered != 0; covered &= covered - 1)
        {
            var row = BitOperations.TrailingZeroCount(covered);
            var (start, count) = (rows.Pixel[row], rows.Count[row]);
            if (at + count + Lanes > Pixels.Length) Grow(at + count + Lanes);
            ref var pixel = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Pixels), at);
            ref var height = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Heights), at);
            ref var face = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Faces), at);

            // Eight at a time and past the end of the run: what is too much is overwritten by the next.
            var i = 0;
            do
            {
                rows.Heights(row, i).StoreUnsafe(ref height, (nuint)i);
                (Vector256<int>.Indices + Vector256.Create(start + i)).StoreUnsafe(ref pixel, (nuint)i);
                top.StoreUnsafe(ref face, (nuint)i);
                i += Lanes;
            }
            while (i < count);
            at += count;
        }

        Count = at;
        if (rows.Lowest <= 0) DropBelowGround(first);
    }

    // Also turns a height of -0, whose bits would sort above all others, into 0.
    private void DropBelowGround(int first)
    {
        var kept = first;
        for (var i = first; i < Count; i++)
        {
            if (Heights[i] < 0) continue;
            (Pixels[kept], Heights[kept], Faces[kept]) = (Pixels[i], Heights[i] + 0f, Faces[i]);
            kept++;
        }

        Count = kept;
    }

    private void Grow(int count)
    {
        var size = Math.Max(2 * Pixels.Length, count);
        (var pixels, var heights, var faces) = (Pixels, Heights, Faces);
        Array.Resize(ref pixels, size);
        Array.Resize(ref heights, size);
        Array.Resize(ref faces, size);
        (Pixels, Heights, Faces) = (pixels, heights, faces);
    }
}
