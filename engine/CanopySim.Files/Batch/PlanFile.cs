using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CanopySim.Files.Comparison;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Text;

namespace CanopySim.Files.Batch;

/// <summary>Reads plan files, as strictly as scenarios, and checks what they vary against every scenario they name.</summary>
public static partial class PlanFile
{
    private const int LargestFile = 10_000_000;

    private const int MostScenarios = 1000;

    private const int LongestName = 60;

    // Seconds of one core for a season of first-season: bench/README.md. Only shards are sized by them.
    private static readonly Dictionary<Quality, double> SecondsForSeason = new()
    {
        [Quality.Rough] = 3,
        [Quality.Draft] = 4,
        [Quality.Standard] = 20,
        [Quality.Fine] = 100,
    };

    private const double MinutesOfShard = 10;

    /// <summary>True where a file is a plan and not a scenario: it names scenarios.</summary>
    public static bool IsPlan(string path)
    {
        if (!File.Exists(path)) return false;
        try
        {
            return ReadText(path, new InputPlace(path)).Find("scenarios") is not null;
        }
        catch (InputError)
        {
            // Whatever is wrong with it, the reader of scenarios says it as well.
            return false;
        }
    }

    /// <summary>Seconds of one core that a season of a quality took on one machine: only a guess elsewhere.</summary>
    public static double SecondsOfSeason(Quality quality) => SecondsForSeason[quality];

    /// <summary>Reads a plan and the scenarios it names.</summary>
    /// <exception cref="InputError">Anything in it is wrong; the first thing is told.</exception>
    public static BatchPlan Read(string path)
    {
        var place = new InputPlace(path);
        var binder = new ScenarioBinder(path);
        var text = binder.Bind<PlanText>(ReadText(path, place));
        CheckName(text.Name, binder);
        var scenarios = ReadScenarios(path, text, binder);
        var weather = new PlanWeatherReader(path, binder).Read(text.Weather);
        var keys = new VariedKeyReader(binder, scenarios);
        List<VariedKey> varied = [.. text.Vary.Select(pair => keys.Read(pair.Key, pair.Value))];
        var design = Design(text.Design, varied.Count(key => key.Distribution is not null), binder);
        CheckCount(text, scenarios.Count, weather.Count, varied, design, binder);
        return new BatchPlan
        {
            Name = text.Name,
            Path = path,
            Scenarios = scenarios,
            Weather = weather,
            Varied = varied,
            Design = design,
            Replicates = text.Replicates,
            Seed = text.Seed,
            Quality = text.Quality,
            Until = Until(text.Until, binder),
            ItemsPerShard = ItemsPerShard(text, binder),
            Values = binder.Values,
        };
    }

    private static MapNode ReadText(string path, InputPlace place) =>
        ScenarioText.Parse(StrictText.Read(path, place, LargestFile, "plan"), path) switch
        {
            MapNode map => map,
            null or ValueNode { IsEmpty: true } =>
                throw new InputError(new InputPlace(path, 1), "no keys, only comments or nothing", "a plan"),
            { } other => throw new InputError(
                other.Place with { Column = null }, other.Kind, "keys with values, such as name: my plan"),
        };

    private static void CheckName(string name, ScenarioBinder binder)
    {
        if (NameLetters().IsMatch(name) && name.Length <= LongestName) return;
        throw new InputError(
            binder.PlaceOf("name"), InputError.Quote(name),
            $"letters, digits, dashes and underscores, at most {LongestName}: a folder is named so", "name");
    }

    private static List<PlanScenario> ReadScenarios(string path, PlanText text, ScenarioBinder binder)
    {
        if (text.Scenarios.Count is 0 or > MostScenarios)
            throw new InputError(
                binder.PlaceOf("scenarios"), $"{text.Scenarios.Count} scenarios", $"1 to {MostScenarios} files",
                "scenarios");
        var set = text.Set.Select(pair => new ScenarioChange(pair.Key, pair.Value, binder.PlaceOf($"set.{pair.Key}")))
            .ToList();
        foreach (var change in set) VariedKeyReader.CheckFree(change.Key, change.Place, $"set.{change.Key}");
        var read = new List<(ScenarioTemplate Template, ScenarioDocument Document)>();
        for (var i = 0; i < text.Scenarios.Count; i++)
        {
            var key = $"scenarios.{i}";
            var file = ScenarioLayers.Beside(path, text.Scenarios[i]);
            if (!File.Exists(file))
                throw new InputError(binder.PlaceOf(key), $"no file {InputError.Quote(file)}", "a scenario file", key);
            var template = ScenarioTemplate.Read(file).With(set);
            read.Add((template, template.Document()));
        }

        var labels = OptionNames.Of([.. read.Select(one => (one.Document.Scenario.Name, one.Document.Path))]);
        for (var i = 0; i < labels.Count; i++)
        {
            var bytes = Encoding.UTF8.GetByteCount(PartitionFolder.Name(BatchMerge.Partition, labels[i]));
            if (bytes <= PartitionFolder.LongestName) continue;
            var key = $"scenarios.{i}";
            throw new InputError(
                binder.PlaceOf(key), $"the name {InputError.Quote(labels[i])}, for which a folder's name needs {bytes} bytes",
                $"a shorter name: a folder's has at most {PartitionFolder.LongestName}", key);
        }

        return [.. read.Select((one, i) => new PlanScenario(labels[i], one.Template, one.Document))];
    }

    private static PlanDesign? Design(PlanDesignText text, int sampled, ScenarioBinder binder)
    {
        var size = text.Kind == DesignKind.Morris ? text.Trajectories : text.Points;
        var (key, other) = text.Kind == DesignKind.Morris
            ? ("design.trajectories", "design.points")
            : ("design.points", "design.trajectories");
        if (sampled == 0)
        {
            if (binder.IsGiven("design"))
                throw new InputError(
                    binder.PlaceOf("design"), "a design, and no key with a distribution",
                    "a distribution under vary, or no design", "design");
            return null;
        }

        if (binder.IsGiven(other))
            throw new InputError(binder.PlaceOf(other), "not for this kind of design", $"{key} in its place", other);
        if (size is not { } points)
            throw new InputError(
                binder.PlaceOf("design"), "missing", "how many, as 200: keys with a distribution are sampled", key);
        if (text.Kind == DesignKind.Morris && text.Levels % 2 != 0)
            throw new InputError(binder.PlaceOf("design.levels"), $"{text.Levels} levels", "an even number", "design.levels");
        var design = new PlanDesign(text.Kind, points, text.Levels);
        return design.MostDimensions is { } most && sampled > most
            ? throw new InputError(
                binder.PlaceOf("design.kind"), $"{sampled} keys with a distribution", $"at most {most}", "design.kind")
            : design;
    }

    private static void CheckCount(
        PlanText text, int scenarios, int weather, List<VariedKey> varied, PlanDesign? design, ScenarioBinder binder)
    {
        var sampled = varied.Count(key => key.Distribution is not null);
        var count = (double)scenarios * weather * text.Replicates * (design?.Count(sampled) ?? 1);
        count = varied.Where(key => key.Distribution is null).Aggregate(count, (all, key) => all * key.Values.Count);
        if (count <= PlanItems.MostItems) return;
        throw new InputError(
            binder.PlaceOf("vary"), string.Create(CultureInfo.InvariantCulture, $"{count:N0} seasons"),
            string.Create(CultureInfo.InvariantCulture, $"at most {PlanItems.MostItems:N0}"), "vary");
    }

    private static (int Month, int Day)? Until(string? text, ScenarioBinder binder)
    {
        if (text is null) return null;
        // A leap year, so that the 29th of February is a day.
        if (ValueReader.Date($"2024-{text}") is { } date) return (date.Month, date.Day);
        throw new InputError(
            binder.PlaceOf("until"), $"{InputError.Quote(text)} is no day of a year", "month and day, as 05-31", "until");
    }

    private static int ItemsPerShard(PlanText text, ScenarioBinder binder)
    {
        if (text.Shard is { Items: not null, Minutes: not null })
            throw new InputError(
                binder.PlaceOf("shard.minutes"), "both items and minutes", "one of them", "shard.minutes");
        return text.Shard.Items
            ?? Math.Max(1, (int)(60 * (text.Shard.Minutes ?? MinutesOfShard) / SecondsForSeason[text.Quality]));
    }

    [GeneratedRegex("^[A-Za-z0-9][A-Za-z0-9_-]*$")]
    private static partial Regex NameLetters();
}
