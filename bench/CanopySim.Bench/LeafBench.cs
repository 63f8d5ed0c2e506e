using BenchmarkDotNet.Attributes;
using CanopySim.Numerics;
using CanopySim.Photosynthesis;

namespace CanopySim.Bench;

/// <summary>
/// The leaf solution of 1,024 leaves of one hour on one thread, by air temperature; times are those of one leaf.
/// </summary>
public class LeafBench
{
    private const int Leaves = 1024;

    private readonly LeafState[] _leaves = new LeafState[Leaves];
    private readonly LeafGasExchange[] _results = new LeafGasExchange[Leaves];
    private readonly LeafBatchScratch _scratch = new();

    private LeafBatch _batch;
    private LeafSolver _solver;

    [Params(25, 36)]
    public int Air { get; set; }

    // Half of them in the sun, of all ages, under slight water stress.
    [GlobalSetup]
    public void Spread()
    {
        for (var i = 0; i < Leaves; i++)
        {
            var ppfd = SeededValue.Uniform(1, "light", i) * (i % 2 == 0 ? 1800 : 300);
            var capacity = 0.2 + (0.9 * SeededValue.Uniform(1, "capacity", i));
            _leaves[i] = new LeafState(ppfd, 0.06 * ppfd, capacity, 0.5 + (0.5 * capacity), 0.06 + (0.08 * SeededValue.Uniform(1, "width", i)), 0.8);
        }

        var environment = new LeafEnvironment(Air, 2, 100, 1, 420);
        _batch = new LeafBatch(environment, new LeafParameters());
        _solver = new LeafSolver(environment, new LeafParameters());
    }

    [Benchmark(OperationsPerInvoke = Leaves)]
    public LeafBatchTally Batch() => _batch.Solve(_leaves, _results, _scratch);

    [Benchmark(OperationsPerInvoke = Leaves, Baseline = true)]
    public double OneByOne()
    {
        var sum = 0.0;
        for (var i = 0; i < Leaves; i++) sum += _solver.Solve(_leaves[i]).NetAssimilation;
        return sum;
    }
}
