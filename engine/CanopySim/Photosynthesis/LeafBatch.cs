using System.Numerics;

namespace CanopySim.Photosynthesis;

/// <summary>
/// The solution of <see cref="LeafSolver"/> for many leaves of one hour at once, in floats, in three tiers: a few fixed steps
/// for all, more steps for those that moved too far, the solver in double for what is left. Each leaf's answer is its own: who
/// else is in the batch, and where, changes no bit.
/// </summary>
public readonly struct LeafBatch
{
    // Measured over the whole domain: one temperature more in the first tier saves nine of ten leaves the second, and costs more.
    private static readonly LeafLanesSteps First = new(Temperatures: 3, FirstCarbon: 3, Carbon: 2);

    private static readonly LeafLanesSteps Second = new(Temperatures: 7, FirstCarbon: 4, Carbon: 2);

    private static readonly LeafLanesTolerance Tolerance = new(Step: 0.01f, StepsProduct: 2.5e-4f, Co2: 0.02f);

    private readonly LeafSolver _solver;
    private readonly LeafLanesAir _air;
    private readonly float _monotoneBelow;

    public LeafBatch(in LeafEnvironment environment, LeafParameters parameters)
    {
        _solver = new LeafSolver(environment, parameters);
        _air = new LeafLanesAir(environment, parameters);
        _monotoneBelow = (float)LeafTemperatureSearch.MonotoneBelow(parameters);
    }

    /// <summary>Solves every leaf into the place of its number.</summary>
    /// <param name="leaves">The leaves.</param>
    /// <param name="results">As many places.</param>
    /// <param name="scratch">Memory of the calling thread, to be used again.</param>
    public LeafBatchTally Solve(ReadOnlySpan<LeafState> leaves, Span<LeafGasExchange> results, LeafBatchScratch scratch)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(results.Length, leaves.Length);
        scratch.Begin(leaves.Length);
        Tier(First, leaves, results, scratch.All(leaves.Length), scratch.Again, scratch);
        var again = scratch.Again.Count;
        Tier(Second, leaves, results, scratch.Again.Numbers, scratch.Left, scratch);
        var warm = scratch.Warm.Count;
        LookForCooler(leaves, results, scratch);
        foreach (var number in scratch.Left.Numbers) results[number] = _solver.Solve(leaves[number]);
        return new(again, warm, scratch.Left.Count);
    }

    private void Tier(
        in LeafLanesSteps steps,
        ReadOnlySpan<LeafState> leaves,
        Span<LeafGasExchange> results,
        ReadOnlySpan<int> numbers,
        LeafNumbers unsettled,
        LeafBatchScratch scratch)
    {
        var eights = scratch.Block.Eights;
        var warmer = _monotoneBelow + LeafLanesCoolest.Resolution;
        for (var start = 0; start < numbers.Length; start += LeafBlock.Leaves)
        {
            var block = numbers.Slice(start, Math.Min(LeafBlock.Leaves, numbers.Length - start));
            LeafLanesInput.Fill(eights, _air, leaves, block);
            Add(Run(eights, steps), block, unsettled);
            LeafLanesOutput.Read(eights, block, results);
        }

        // Warm leaves that settled: the last in `unsettled` are in ascending order, as the numbers are.
        var rest = unsettled.Numbers;
        var next = 0;
        foreach (var number in numbers)
        {
            if (next < rest.Length && rest[next] == number) next++;
            else if (results[number].LeafTemperatureCelsius > warmer) scratch.Warm.Add(number);
        }
    }

    private ulong Run(Span<LeafLanes> eights, in LeafLanesSteps steps)
    {
        for (var step = 0; step < steps.Temperatures; step++)
        {
            LeafLanesRates.Update(eights, _air);
            var carbonSteps = step == 0 ? steps.FirstCarbon : steps.Carbon;
            for (var carbon = 0; carbon < carbonSteps; carbon++) LeafLanesCarbon.Step(eights, _air);
            if (step == 0) LeafLanesHeat.FirstStep(eights, _air);
            else if (step < steps.Temperatures - 1) LeafLanesHeat.Step(eights, _air);
        }

        return LeafLanesHeat.Finish(eights, _air, Tolerance);
    }

    private void LookForCooler(ReadOnlySpan<LeafState> leaves, ReadOnlySpan<LeafGasExchange> results, LeafBatchScratch scratch)
    {
        Span<float> found = stackalloc float[LeafBlock.Leaves];
        for (var start = 0; start < scratch.Warm.Count; start += LeafBlock.Leaves)
        {
            var block = scratch.Warm.Numbers.Slice(start, Math.Min(LeafBlock.Leaves, scratch.Warm.Count - start));
            for (var lane = 0; lane < LeafBlock.Leaves; lane++)
                found[lane] = (float)results[block[Math.Min(lane, block.Length - 1)]].LeafTemperatureCelsius;
            LeafLanesInput.Fill(scratch.Block.Eights, _air, leaves, block);
            Add(LeafLanesCoolest.Doubtful(scratch.Block.Eights, _air, _monotoneBelow, found), block, scratch.Left);
        }
    }

    private static void Add(ulong flagged, ReadOnlySpan<int> block, LeafNumbers numbers)
    {
        if (block.Length < LeafBlock.Leaves) flagged &= (1UL << block.Length) - 1;
        for (; flagged != 0; flagged &= flagged - 1) numbers.Add(block[BitOperations.TrailingZeroCount(flagged)]);
    }
}

/// <summary>How many leaves of a batch needed more than the first steps.</summary>
/// <param name="Again">Solved again with more steps.</param>
/// <param name="Warm">Warm enough for a second rest temperature.</param>
/// <param name="Double">Solved in double.</param>
public readonly record struct LeafBatchTally(int Again, int Warm, int Double);

/// <summary>Fixed counts of steps.</summary>
/// <param name="Temperatures">Leaf temperatures tried.</param>
/// <param name="FirstCarbon">Steps of CO₂ between the cells at the first of them.</param>
/// <param name="Carbon">The same at each later one.</param>
internal readonly record struct LeafLanesSteps(int Temperatures, int FirstCarbon, int Carbon);
