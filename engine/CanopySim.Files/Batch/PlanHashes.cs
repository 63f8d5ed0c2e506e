using System.Security.Cryptography;
using System.Text;
using CanopySim.Files.Results;

namespace CanopySim.Files.Batch;

/// <summary>A file that a plan read, by its SHA-256.</summary>
public sealed record PlanInput(string Path, string Sha256);

/// <summary>
/// What decides the rows of a plan, as SHA-256: contents of scenarios and weather, values, seeds, quality, the model's build and
/// the tables' columns. Comments and names in the plan do not count; what would give other rows does.
/// </summary>
public sealed class PlanHashes
{
    private readonly BatchPlan _plan;
    private readonly PlanItems _items;
    private readonly string _head;
    private readonly string[] _scenarios;
    private readonly string[,] _weather;
    private readonly string[,] _labels;

    public PlanHashes(BatchPlan plan, PlanItems items, SeasonsTable seasons)
    {
        (_plan, _items) = (plan, items);
        (SeasonsSchema, CoursesSchema) = (seasons.Schema.Id, CoursesTable.Schema.Id);
        var files = new SortedDictionary<string, string>(StringComparer.Ordinal);
        _scenarios = [.. plan.Scenarios.Select(scenario => Sum(
            [.. scenario.Document.SourceFiles.SkipLast(1).Select(OfFile), .. scenario.Document.Values.Where(value => IsOf(plan, value.Where)).Select(value => $"{value.Key}={value.Value}")]))];
        _weather = new string[plan.Scenarios.Count, plan.Weather.Count];
        _labels = new string[plan.Scenarios.Count, plan.Weather.Count];
        for (var scenario = 0; scenario < plan.Scenarios.Count; scenario++)
        {
            for (var weather = 0; weather < plan.Weather.Count; weather++)
            {
                var document = plan.Scenarios[scenario].Document;
                _weather[scenario, weather] = OfFile(BatchWeather.PathOf(plan.Weather[weather], document));
                _labels[scenario, weather] = BatchWeather.LabelOf(plan.Weather[weather], document, plan);
            }
        }

        Inputs = [.. files.Select(file => new PlanInput(file.Key, file.Value))];
        _head = string.Join('\n', "batch 1", EngineBuild, SeasonsSchema, CoursesSchema, $"{plan.Quality}", $"{plan.Until}");
        Plan = Sum([_head, .. Enumerable.Range(1, items.Shards).Select(OfShard)]);

        string OfFile(string path) =>
            files.TryGetValue(path, out var known) ? known : files[path] = InputHashes.OfFile(path);
    }

    /// <summary>Identity of the model's and the formats' code: another build is another one, whatever its version says.</summary>
    public static string EngineBuild { get; } = Sum(
        [$"{typeof(Scenario).Assembly.ManifestModule.ModuleVersionId}", $"{typeof(PlanHashes).Assembly.ManifestModule.ModuleVersionId}"])[..12];

    public string SeasonsSchema { get; }

    public string CoursesSchema { get; }

    /// <summary>Scenarios, what they are based on, and weather.</summary>
    public IReadOnlyList<PlanInput> Inputs { get; }

    /// <summary>Of the whole plan.</summary>
    public string Plan { get; }

    /// <summary>Of what decides the rows of a shard.</summary>
    public string OfShard(int shard)
    {
        var (first, last) = _items.ShardItems(shard);
        var text = new StringBuilder(_head);
        for (var number = first; number <= last; number++)
        {
            var item = _items.Item(number);
            var weather = _plan.Weather[item.Weather];
            text.Append('\n').Append(number)
                .Append('\t').Append(_plan.Scenarios[item.Scenario].Label)
                .Append('\t').Append(_scenarios[item.Scenario])
                .Append('\t').Append(_labels[item.Scenario, item.Weather])
                .Append('\t').Append(_weather[item.Scenario, item.Weather])
                .Append('\t').Append(weather.Year).Append('\t').Append(weather.Seed).Append('\t').Append(item.Seed);
            for (var key = 0; key < item.Values.Count; key++)
                text.Append('\t').Append(_plan.Varied[key].Key).Append('=').Append(item.Values[key].Text);
        }

        return Sum([text.ToString()]);
    }

    // What a plan sets is read with its line where it is a plain value, and without one within a list or mapping.
    private static bool IsOf(BatchPlan plan, string where) =>
        where == plan.Path || where.StartsWith(plan.Path + ":", StringComparison.Ordinal);

    private static string Sum(IEnumerable<string> parts) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', parts))));
}
