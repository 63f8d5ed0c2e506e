namespace CanopySim.Photosynthesis;

/// <summary>Reads leaves out of their lanes.</summary>
internal static class LeafLanesOutput
{
    public static void Read(LeafLanes lanes, ReadOnlySpan<int> numbers, Span<LeafGasExchange> results)
    {
        var net = LeafLanesInput.Floats(lanes.Net);
        var respiration = LeafLanesInput.Floats(lanes.Respiration);
        var stomatal = LeafLanesInput.Floats(lanes.Stomatal);
        var transpiration = LeafLanesInput.Floats(lanes.Transpiration);
        var temperature = LeafLanesInput.Floats(lanes.Temperature);
        var co2 = LeafLanesInput.Floats(lanes.IntercellularCo2);
        for (var lane = 0; lane < numbers.Length; lane++)
        {
            results[numbers[lane]] = new(
                net[lane],
                net[lane] + respiration[lane],
                respiration[lane],
                stomatal[lane],
                transpiration[lane],
                temperature[lane],
                co2[lane]);
        }
    }
}
