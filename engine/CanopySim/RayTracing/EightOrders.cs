using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.RayTracing;

/// <summary>For every set of eight lanes: the order that brings them to the front and keeps their sequence.</summary>
internal static class EightOrders
{
    private static readonly int[] Table = Fill();

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<int> Squeeze(uint lanes) =>
        Vector256.LoadUnsafe(ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Table), 8 * lanes));

    private static int[] Fill()
    {
        var table = new int[8 * 256];
        for (var lanes = 0; lanes < 256; lanes++)
        {
            var place = 8 * lanes;
            for (var lane = 0; lane < 8; lane++)
            {
                if ((lanes & (1 << lane)) != 0) table[place++] = lane;
            }
        }

        return table;
    }
}
