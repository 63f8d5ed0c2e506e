using CanopySim.Files.Batch;
using static CanopySim.Bench.Tables;

namespace CanopySim.Bench;

/// <summary><c>batch</c>: seasons a minute on one core and on more, memory, and what a batch costs beside its seasons.</summary>
internal static class BatchCommand
{
    private const string Usage = "batch [--scenario FILE] [--seasons N] [--threads 1,2] [--rounds N] [--planned N]";

    public static int Run(string[] arguments)
    {
        var known = new[] { ("--scenario", "scenarios/first-season/scenario.yaml"), ("--seasons", "24"), ("--threads", "1,2"), ("--rounds", "1"), ("--planned", "10000") };
        if (Options.Read(arguments, Usage, known) is not { } options) return 2;
        var scenario = Path.GetFullPath(options.Text("--scenario"));
        var folder = Directory.CreateTempSubdirectory("canopysim-batch-");
        try
        {
            var planned = Plan(folder.FullName, scenario, options.Number("--planned"));
            var planning = Cost.Of(() => Open(planned, Path.Combine(folder.FullName, "planned")));
            Console.WriteLine(Text($"{options.Number("--planned")} items planned, checked and hashed in {planning.Wall / 1000:0.00} s. {Machine.Line}"));
            var plan = Plan(folder.FullName, scenario, options.Number("--seasons"));
            // What the compiler does for the first season is no part of the others.
            Grow(plan, Path.Combine(folder.FullName, "first"), 1, [1]);
            PrintHeader(
                "round", "seasons at once", "seasons", "seconds gone by", "seasons a minute", "processor seconds a season", "cores busy", "cores the host took",
                "paused to collect [%]", "outside the model [%]", "peak [MB]");
            for (var round = 1; round <= options.Number("--rounds"); round++)
            {
                var model = ModelAlone(plan, options.Number("--seasons"));
                foreach (var threads in options.Numbers("--threads"))
                    Print(plan, Path.Combine(folder.FullName, Text($"{round}-{threads}")), round, threads, model);
            }

            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Print(string plan, string folder, int round, int threads, double model)
    {
        Machine.ForgetPeak();
        var batch = Open(plan, folder);
        var (stolen, paused) = (Machine.StolenSeconds, GC.GetTotalPauseDuration());
        var cost = Cost.Of(() => Grow(plan, folder, threads, [.. Enumerable.Range(1, batch.Items.Shards)]));
        (stolen, paused) = (Machine.StolenSeconds - stolen, GC.GetTotalPauseDuration() - paused);
        var peak = Machine.PeakMegabytes;
        var seasons = batch.Items.Count;
        Row(
            $"{round}", $"{threads}", $"{seasons}", Text($"{cost.Wall / 1000:0.0}"), Text($"{60_000 * seasons / cost.Wall:0.0}"),
            Text($"{cost.Processor / 1000 / seasons:0.00}"), Text($"{cost.Processor / cost.Wall:0.00}"), Text($"{1000 * stolen / cost.Wall:0.00}"),
            Text($"{100 * paused.TotalMilliseconds / cost.Wall:0.0}"), Text($"{100 * (cost.Processor - model) / cost.Processor:0.0}"), Text($"{peak:0}"));
    }

    // Processor time of the same seasons by the model alone [ms], their weather at hand.
    private static double ModelAlone(string plan, int items)
    {
        var read = PlanFile.Read(plan);
        var list = new PlanItems(read);
        var weather = new BatchWeather(read, items);
        var inputs = Enumerable.Range(1, items).Select(list.Item)
            .Select(item => (Document: read.Scenarios[item.Scenario].Template.Document(list.Changes(item)), Item: item))
            .Select(pair => (pair.Document.Scenario, Weather: weather.Of(pair.Item, pair.Document))).ToList();
        return Cost.Of(() =>
        {
            foreach (var (scenario, series) in inputs)
                Simulation.Run(scenario, series.Series, series.UtcOffsetHours, new SeasonOptions { Quality = read.Quality, Threads = 1 });
        }).Processor;
    }

    private static void Grow(string plan, string folder, int threads, IReadOnlyList<int> shards)
    {
        var batch = Open(plan, folder);
        var season = new ItemSeason(batch.Plan, batch.Items, threads);
        new BatchRun(batch.Items, batch.Folder, season, new BatchRunOptions(threads, shards), _ => { }, Console.Error.WriteLine)
            .Run(CancellationToken.None, CancellationToken.None);
    }

    private static (BatchPlan Plan, PlanItems Items, BatchFolder Folder) Open(string path, string folder)
    {
        var plan = PlanFile.Read(path);
        var items = new PlanItems(plan);
        new BatchWeather(plan, kept: 1).CheckAll(items);
        var seasons = new SeasonsTable(plan);
        return (plan, items, new BatchFolder(folder, plan, items, new PlanHashes(plan, items, seasons), seasons));
    }

    private static string Plan(string folder, string scenario, int items)
    {
        var path = Path.Combine(folder, Text($"plan-{items}.yaml"));
        File.WriteAllText(path, Text($"""
            name: bench
            scenarios: [{scenario}]
            vary:
              soil.transpirable_water: {"{distribution: uniform, from: 100 mm, to: 250 mm}"}
            design: {"{"}kind: latin_hypercube, points: {items}{"}"}
            seed: 1
            shard: {"{items: 4}"}

            """));
        return path;
    }
}
