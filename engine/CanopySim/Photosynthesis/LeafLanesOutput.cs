using System.Runtime.Intrinsics;

namespace CanopySim.Photosynthesis;

/// <summary>Reads leaves out of their lanes.</summary>
internal static class LeafLanesOutput
{
    public static void Read(Span<LeafLanes> eights, ReadOnlySpan<int> numbers, Span<LeafGasExchange> results)
    {
        var place = 0;
        foreach (ref var lanes in eights)
        {
            var net = LeafBlock.Each(ref lanes.Net);
            var respiration = LeafBlock.Each(ref lanes.Respiration);
            var stomatal = LeafBlock.Each(ref lanes.Stomatal);
            var transpiration = LeafBlock.Each(ref lanes.Transpiration);
            var temperature = LeafBlock.Each(ref lanes.Temperature);
            var co2 = LeafBlock.Each(ref lanes.IntercellularCo2);
            for (var lane = 0; lane < Vector256<float>.Count && place < numbers.Length; lane++)
            {
                results[numbers[place++]] = new(
                    net[lane],
                    (double)net[lane] + respiration[lane],
                    respiration[lane],
                    stomatal[lane],
                    transpiration[lane],
                    temperature[lane],
                    co2[lane]);
            }
        }
    }
}
