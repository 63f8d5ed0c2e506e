using System.Runtime.Intrinsics;

namespace CanopySim.Photosynthesis;

/// <summary>
/// Tells of 64 warm leaves which may have a cooler rest temperature than the one found: the climb of
/// <see cref="LeafTemperatureSearch"/>. Each leaf climbs from the temperature under which there is one root alone, keeping the
/// conductance of where it stands; conductance falls with temperature, so no root lies within a step.
/// </summary>
internal static class LeafLanesCoolest
{
    private const int ClimbSteps = 7;

    private const int CarbonSteps = 3;

    /// <summary>
    /// A bit for each lane that met a sign of another root, or did not arrive: these are for the solution in double.
    /// </summary>
    public static ulong Doubtful(LeafLanes lanes, LeafLanesAir air, float monotoneBelow, ReadOnlySpan<float> found)
    {
        var goals = lanes.LastTemperature;
        found.CopyTo(LeafLanesInput.Floats(goals));
        var under = ulong.MaxValue;
        var doubtful = 0UL;
        for (var i = 0; i < LeafLanes.Vectors; i++) lanes.Temperature[i] = Vector256.Create(monotoneBelow);
        for (var step = 0; step < ClimbSteps && (under & ~doubtful) != 0; step++)
        {
            LeafLanesRates.Update(lanes, air);
            for (var carbon = 0; carbon < CarbonSteps; carbon++) LeafLanesCarbon.Step(lanes, air);
            under = 0;
            for (var i = 0; i < LeafLanes.Vectors; i++)
            {
                var (climbing, sign) = Climb(lanes, air, i);
                doubtful |= (ulong)sign.ExtractMostSignificantBits() << (i * Vector256<float>.Count);
                under |= (ulong)climbing.ExtractMostSignificantBits() << (i * Vector256<float>.Count);
            }
        }

        return doubtful | under;
    }

    // The rest at fixed conductance is concave in temperature: the chord to the goal crosses zero before it does.
    private static (Vector256<float> Climbing, Vector256<float> Sign) Climb(LeafLanes lanes, LeafLanesAir air, int i)
    {
        var temperature = lanes.Temperature[i];
        var goal = lanes.LastTemperature[i];
        var high = goal - Vector256.Create((float)LeafTemperatureSearch.Resolution);
        var climbing = Vector256.LessThan(temperature, high);
        var vapor = LeafLanesHeat.VaporConductance(lanes, i);
        var residual = LeafLanesHeat.Residual(lanes, air, i, temperature, lanes.Saturation[i], vapor, out _);
        var atGoal = LeafLanesHeat.Residual(lanes, air, i, goal, LeafLanesRates.Saturation(goal), vapor, out _);
        var sign = climbing & Vector256.LessThanOrEqual(residual, Vector256<float>.Zero);

        // Where the goal is still too cold at that conductance, the blade would pass it.
        var falls = Vector256.LessThan(atGoal, Vector256<float>.Zero);
        var chord = temperature + ((goal - temperature) * residual / (residual - atGoal));
        var next = Vector256.ConditionalSelect(falls, chord, goal);
        next = Vector256.ConditionalSelect(climbing, next, temperature);
        lanes.Temperature[i] = next;
        return (Vector256.LessThan(next, high), sign);
    }
}
