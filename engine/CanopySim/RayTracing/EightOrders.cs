using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace CanopySim.RayTracing;

/// <summary>For every set of eight lanes: the order that brings them to the front and keeps their sequence.</summary>
internal static class EightOrders
{
    private static readonly int[] Table = Fill();

    /// <summary>The order for a set of lanes is the eight numbers at 8 times its bits. Pinned, for the life of the process.</summary>
    public static unsafe int* First => (int*)Unsafe.AsPointer(ref MemoryMarshal.GetArrayDataReference(Table));

    private static int[] Fill()
    {
        var table = GC.AllocateArray<int>(8 * 256, pinned: true);
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
