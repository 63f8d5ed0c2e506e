using System.Collections.Concurrent;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Weather;
using CanopySim.Weather;

namespace CanopySim.Files.Batch;

/// <summary>
/// Weather of the seasons of a plan, shared by all who grow them: a file is read once for a scenario, and completed weather is
/// kept while seasons ask for it. Safe for many threads.
/// </summary>
public sealed class BatchWeather(BatchPlan plan, int kept)
{
    private readonly ConcurrentDictionary<RecordKey, Lazy<WeatherRecord>> _records = new();
    private readonly ConcurrentDictionary<RecordKey, Lazy<WeatherClimate>> _climates = new();
    private readonly bool _isSiteVaried = plan.Varied.Any(key =>
        key.Key.StartsWith("site.", StringComparison.Ordinal) || key.Key.StartsWith("weather.", StringComparison.Ordinal));
    private readonly Lock _lock = new();
    private readonly LinkedList<(SeriesKey Key, Lazy<CompleteWeather> Series)> _recent = [];

    // A typical year is read for the year that it stands for.
    private readonly record struct RecordKey(int Scenario, string Path, int? TypicalYear);

    private readonly record struct SeriesKey(RecordKey Record, ulong? Seed);

    /// <summary>Complete weather, and how far local standard time is from UTC [h].</summary>
    public sealed record CompleteWeather(WeatherSeries Series, double UtcOffsetHours);

    /// <summary>The weather of an item.</summary>
    /// <param name="item">The item.</param>
    /// <param name="document">Its scenario.</param>
    /// <exception cref="InputError">The file is wrong.</exception>
    /// <exception cref="SeasonInputException">The record is too short to make weather like it.</exception>
    public CompleteWeather Of(PlanItem item, ScenarioDocument document)
    {
        var record = KeyOf(item.Scenario, plan.Weather[item.Weather], document);
        return _isSiteVaried
            ? Complete(record, document)
            : Kept(new SeriesKey(record, document.Scenario.Weather.Seed), document);
    }

    /// <summary>Reads every weather file and sees whether it covers the seasons that are asked of it.</summary>
    /// <exception cref="InputError">A file is wrong.</exception>
    /// <exception cref="SeasonInputException">A file does not cover a season.</exception>
    public void CheckAll(PlanItems items)
    {
        for (var scenario = 0; scenario < plan.Scenarios.Count; scenario++)
        {
            foreach (var weather in plan.Weather)
            {
                var document = plan.Scenarios[scenario].Document;
                var changed = document.Scenario with
                {
                    Season = document.Scenario.Season with { Year = weather.Year ?? document.Scenario.Season.Year },
                };
                var record = Record(KeyOf(scenario, weather, document), document);
                SeasonCalendar.Of(changed, record.FirstDay, record.FirstDay.AddDays(record.DayCount - 1));
            }
        }

        // What years do to the rest of a scenario, as to a given budbreak, is seen on the first season of each.
        var each = items.Count / (plan.Scenarios.Count * plan.Weather.Count);
        for (var first = 1; first <= items.Count; first += each)
        {
            var item = items.Item(first);
            plan.Scenarios[item.Scenario].Template.Document([.. items.Changes(item).Skip(plan.Varied.Count)]);
        }
    }

    /// <summary>The weather file of a scenario in a season of weather.</summary>
    public static string PathOf(PlanWeather weather, ScenarioDocument document) => weather.File ?? document.WeatherPath;

    /// <summary>The name of a weather file; where the plan has two of that name, the folders behind which they differ before it.</summary>
    public static string LabelOf(PlanWeather weather, ScenarioDocument document, BatchPlan plan)
    {
        var path = Parts(PathOf(weather, document));
        var others = plan.Scenarios.SelectMany(scenario => plan.Weather.Select(other => PathOf(other, scenario.Document))).Distinct()
            .Select(Parts).Where(other => !other.SequenceEqual(path)).ToList();
        var kept = 1;
        while (kept < path.Length && others.Any(other => other.TakeLast(kept).SequenceEqual(path.TakeLast(kept)))) kept++;
        return string.Join('/', path.TakeLast(kept));

        static string[] Parts(string file) => Path.GetFullPath(file).Split(Path.DirectorySeparatorChar);
    }

    private static RecordKey KeyOf(int scenario, PlanWeather weather, ScenarioDocument document)
    {
        var path = PathOf(weather, document);
        return new RecordKey(scenario, path, WeatherFile.IsForOneYear(path) ? weather.Year ?? document.Scenario.Season.Year : null);
    }

    private CompleteWeather Kept(SeriesKey key, ScenarioDocument document)
    {
        Lazy<CompleteWeather> series;
        lock (_lock)
        {
            var node = _recent.First;
            while (node is not null && node.Value.Key != key) node = node.Next;
            if (node is null)
            {
                node = new((key, new Lazy<CompleteWeather>(() => Complete(key.Record, document))));
                if (_recent.Count >= kept) _recent.RemoveLast();
            }
            else
            {
                _recent.Remove(node);
            }

            _recent.AddFirst(node);
            series = node.Value.Series;
        }

        return series.Value;
    }

    private CompleteWeather Complete(RecordKey key, ScenarioDocument document)
    {
        var scenario = document.Scenario;
        var record = Record(key, document);
        var offset = SiteTime.Of(scenario.Site).StandardOffsetHours(record.FirstDay.Year);
        if (scenario.Weather.Seed is { } seed)
        {
            var climate = _isSiteVaried
                ? WeatherClimate.Of(record, scenario.Site)
                : _climates.GetOrAdd(key, _ => new(() => WeatherClimate.Of(record, scenario.Site))).Value;
            record = SeasonWeather.Like(record, climate, seed);
        }

        record = WeatherShift.Apply(record, scenario.Weather, scenario.Site);
        return new(WeatherBuilder.Complete(record, scenario.Weather, scenario.Site, offset), offset);
    }

    private WeatherRecord Record(RecordKey key, ScenarioDocument document) => _records.GetOrAdd(key, _ => new(() =>
        WeatherFile.Read(
            key.Path, document.Scenario.Weather, plan.Scenarios[key.Scenario].Document.Scenario.Site, key.TypicalYear))).Value;
}
