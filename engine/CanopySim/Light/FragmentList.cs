using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>Pixel, height and upward face of every piece of a triangle that a pixel's sample point meets, as drawn.</summary>
internal sealed class FragmentList(uint[] faces) : IPixelRuns
{
    private const int Lanes = 8;

    public int Count { get; set; }

    public int[] Pixels { get; private set; } = new int[1 << 14];

    /// <summary>Heights above the slope [m], none below the ground.</summary>
    public float[] Heights { get; private set; } = new float[1 << 14];

    /// <summary>The face that looks up along the direction.</summary>
    public uint[] Faces { get; private set; } = new uint[1 << 14];

    public void Add(ReadOnlySpan<PixelRun> runs)
    {
        foreach (ref readonly var run in runs)
        {
            var at = Count;
            if (at + run.Count + Lanes > Pixels.Length) Grow(run.Count + Lanes);
            ref var pixel = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Pixels), at);
            ref var height = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Heights), at);
            ref var face = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Faces), at);
            var top = Vector256.Create(faces[run.Place] | (uint)(1 - run.UpperSeesLight));

            // Eight at a time and past the end of the run: what is too much is overwritten by the next.
            for (var i = 0; i < run.Count; i += Lanes)
            {
                var steps = Vector256<float>.Indices + Vector256.Create((float)i);
                var z = Vector256.Create(run.Height) + (steps * run.Slope);
                z = Vector256.MinNative(Vector256.MaxNative(z, Vector256.Create(run.Lowest)), Vector256.Create(run.Highest));
                z.StoreUnsafe(ref height, (nuint)i);
                (Vector256<int>.Indices + Vector256.Create(run.Pixel + i)).StoreUnsafe(ref pixel, (nuint)i);
                top.StoreUnsafe(ref face, (nuint)i);
            }

            Count = at + run.Count;
            if (run.Lowest <= 0) DropBelowGround(at);
        }
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
        var size = Math.Max(2 * Pixels.Length, Count + count);
        (var pixels, var heights, var faces) = (Pixels, Heights, Faces);
        Array.Resize(ref pixels, size);
        Array.Resize(ref heights, size);
        Array.Resize(ref faces, size);
        (Pixels, Heights, Faces) = (pixels, heights, faces);
    }
}
