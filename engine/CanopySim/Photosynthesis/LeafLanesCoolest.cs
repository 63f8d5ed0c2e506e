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

    /// <summary>
    /// How near its goal [K] a leaf has arrived: another root as near would flatten the balance at the goal, and
    /// <see cref="LeafLanesHeat"/> leaves a leaf with a flat balance to the solution in double.
    /// </summary>
    public const float Resolution = 0.25f;

    private const int CarbonSteps = 2;

    /// <summary>
    /// A bit for each lane that met a sign of another root, or did not arrive: these are for the solution in double.
    /// </summary>
    public static ulong Doubtful(Span<LeafLanes> eights, LeafLanesAir air, float monotoneBelow, ReadOnlySpan<float> found)
    {
        for (var i = 0; i < eights.Length; i++)
        {
            var goal = Vector256.Create(found.Slice(i * Vector256<float>.Count, Vector256<float>.Count));
            eights[i].LastTemperature = goal;
            eights[i].LastSaturation = LeafLanesRates.Saturation(goal);
            eights[i].Temperature = Vector256.Create(monotoneBelow);
        }

        var under = ulong.MaxValue;
        var doubtful = 0UL;
        for (var step = 0; step < ClimbSteps && (under & ~doubtful) != 0; step++)
        {
            LeafLanesRates.Update(eights, air);
            for (var carbon = 0; carbon < CarbonSteps; carbon++) LeafLanesCarbon.Step(eights, air);
            under = 0;
            for (var i = 0; i < eights.Length; i++)
            {
                var (climbing, sign) = Climb(ref eights[i], air);
                doubtful |= (ulong)sign.ExtractMostSignificantBits() << (i * Vector256<float>.Count);
                under |= (ulong)climbing.ExtractMostSignificantBits() << (i * Vector256<float>.Count);
            }
        }

        return doubtful | under;
    }

    // The rest at fixed conductance is concave in temperature: the chord to the goal crosses zero before it does.
    private static (Vector256<float> Climbing, Vector256<float> Sign) Climb(ref LeafLanes lanes, LeafLanesAir air)
    {
        var temperature = lanes.Temperature;
        var goal = lanes.LastTemperature;
        var high = goal - Vector256.Create(Resolution);
        var climbing = Vector256.LessThan(temperature, high);
        var vapor = LeafLanesHeat.VaporConductance(lanes);
        var residual = LeafLanesHeat.Residual(lanes, air, temperature, lanes.Saturation, vapor, out _);
        var atGoal = LeafLanesHeat.Residual(lanes, air, goal, lanes.LastSaturation, vapor, out _);
        var sign = climbing & Vector256.LessThanOrEqual(residual, Vector256<float>.Zero);

        // Where the goal is still too cold at that conductance, the blade would pass it.
        var falls = Vector256.LessThan(atGoal, Vector256<float>.Zero);
        var chord = temperature + ((goal - temperature) * residual / (residual - atGoal));
        var next = Vector256.ConditionalSelect(falls, chord, goal);
        next = Vector256.ConditionalSelect(climbing, next, temperature);
        lanes.Temperature = next;
        return (Vector256.LessThan(next, high), sign);
    }
}
