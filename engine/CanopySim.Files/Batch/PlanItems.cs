using CanopySim.Files.Scenarios;
using CanopySim.Files.Text;

namespace CanopySim.Files.Batch;

/// <summary>A season of a plan.</summary>
/// <param name="Number">From 1, in the order of the list.</param>
/// <param name="Scenario">Index of its scenario.</param>
/// <param name="Weather">Index of its season of weather.</param>
/// <param name="Seed">Seed of what differs by chance.</param>
/// <param name="Values">Value of each varied key, in the plan's order.</param>
public sealed record PlanItem(int Number, int Scenario, int Weather, ulong Seed, IReadOnlyList<VariedValue> Values);

/// <summary>
/// The list of all seasons of a plan, which depends on nothing but the plan: scenarios, in each seasons of weather, in each the
/// values of lists and ranges (the last key fastest), in each the points of the design, in each the replicates. Replicates of
/// one number have the same seed everywhere, so that what differs between two items is what the plan varies.
/// </summary>
public sealed class PlanItems
{
    public const int MostItems = 10_000_000;

    private readonly BatchPlan _plan;
    private readonly double[][] _points;
    private readonly int[] _listed;
    private readonly int[] _sampled;
    private readonly int _combinations;

    public PlanItems(BatchPlan plan)
    {
        _plan = plan;
        var keys = Enumerable.Range(0, plan.Varied.Count).ToList();
        _listed = [.. keys.Where(key => plan.Varied[key].Distribution is null)];
        _sampled = [.. keys.Where(key => plan.Varied[key].Distribution is not null)];
        _points = plan.Design?.Points(_sampled.Length, plan.Seed) ?? [[]];
        _combinations = _listed.Aggregate(1, (count, key) => count * plan.Varied[key].Values.Count);
        Count = plan.Scenarios.Count * plan.Weather.Count * _combinations * _points.Length * plan.Replicates;
    }

    public int Count { get; }

    /// <summary>Points of the design, each coordinate in [0, 1); one without coordinates where nothing is sampled.</summary>
    public IReadOnlyList<double[]> Points => _points;

    /// <summary>How often each is repeated: item − 1 over this, modulo the points, is an item's point.</summary>
    public int Replicates => _plan.Replicates;

    /// <summary>Seasons of a scenario at each point of the design: those of all weather, listed values and replicates.</summary>
    public int SeasonsOfPoint => _plan.Weather.Count * _combinations * _plan.Replicates;

    /// <summary>How many shards the list is cut into.</summary>
    public int Shards => (Count + _plan.ItemsPerShard - 1) / _plan.ItemsPerShard;

    /// <summary>First and last item of a shard; shards count from 1.</summary>
    public (int First, int Last) ShardItems(int shard)
    {
        var first = ((shard - 1) * _plan.ItemsPerShard) + 1;
        return (first, Math.Min(first + _plan.ItemsPerShard - 1, Count));
    }

    /// <summary>The item of a number, from 1.</summary>
    public PlanItem Item(int number)
    {
        if (number < 1 || number > Count)
            throw new ArgumentOutOfRangeException(nameof(number), number, $"a plan of {Count} items");
        var rest = number - 1;
        var replicate = Next(_plan.Replicates);
        var point = _points[Next(_points.Length)];
        var values = new VariedValue[_plan.Varied.Count];
        for (var listed = _listed.Length - 1; listed >= 0; listed--)
        {
            var choices = _plan.Varied[_listed[listed]].Values;
            values[_listed[listed]] = choices[Next(choices.Count)];
        }

        for (var sampled = 0; sampled < _sampled.Length; sampled++)
            values[_sampled[sampled]] = _plan.Varied[_sampled[sampled]].At(point[sampled]);
        var weather = Next(_plan.Weather.Count);
        return new PlanItem(number, rest, weather, _plan.Seed + (ulong)replicate, values);

        int Next(int count)
        {
            (rest, var index) = Math.DivRem(rest, count);
            return index;
        }
    }

    /// <summary>What an item changes of its scenario's text.</summary>
    public IReadOnlyList<ScenarioChange> Changes(PlanItem item)
    {
        var changes = new List<ScenarioChange>(item.Values.Count + 3);
        for (var key = 0; key < item.Values.Count; key++)
            changes.Add(new ScenarioChange(_plan.Varied[key].Key, item.Values[key].Text, _plan.Varied[key].Place));
        var place = new InputPlace(_plan.Path);
        changes.Add(new ScenarioChange("seed", Whole(item.Seed), place));
        var weather = _plan.Weather[item.Weather];
        if (weather.Year is { } year) changes.Add(new ScenarioChange("season.year", NumberText.Whole(year), place));
        if (weather.Seed is { } seed) changes.Add(new ScenarioChange("weather.seed", Whole(seed), place));
        return changes;

        static string Whole(ulong value) => FormattableString.Invariant($"{value}");
    }
}
