using System.Globalization;
using CanopySim.Files.Charts;
using CanopySim.Growth;

namespace CanopySim.Files.Comparison;

/// <summary>Values of a scenario as a grower says them, for the keys that people compare.</summary>
public static class DifferencePhrases
{
    /// <summary>The curve of leaf ages, which is told by where it is best and where half is left.</summary>
    public const string LeafAge = "leaf_age.points";

    public const string ShootsPerMeter = "canopy_work.shoots_per_meter";

    private const string Form = "trellis.form";

    // What stands for the value is {0}; keys without a phrase are said by their own words.
    private static readonly Dictionary<string, string> Phrases = new(StringComparer.Ordinal)
    {
        [Form] = "trained as {0}",
        ["trellis.cordon_height"] = "cordon {0} over the ground",
        ["trellis.lower_cordon_height"] = "lower cordon {0} over the ground",
        ["trellis.cordon_distance"] = "cordons {0} apart",
        ["trellis.head_height"] = "head {0} over the ground",
        ["trellis.top_wire_height"] = "top wire {0} over the ground",
        ["trellis.foliage_width"] = "foliage held to a width of {0}",
        ["rows.azimuth"] = "rows turned {0} from north",
        ["rows.spacing"] = "rows {0} apart",
        ["rows.vine_spacing"] = "vines {0} apart",
        ["rows.rows_in_cell"] = "rows simulated: {0}",
        ["rows.vines_in_cell"] = "vines simulated: {0}",
        [ShootsPerMeter] = "shoots kept: {0}",
        ["canopy_work.shoots_led"] = "shoots led to the wires {0}",
        ["season.year"] = "year {0}",
        ["season.budbreak"] = "budbreak on {0}",
        ["season.harvest"] = "harvest by {0}",
        ["season.harvest_date"] = "harvest on {0}",
        ["season.target_sugar"] = "picked at {0}",
        ["weather.file"] = "weather from {0}",
        ["weather.seed"] = "weather of seed {0}",
        ["seed"] = "chance of seed {0}",
        ["cultivar.from_table"] = "cultivar {0}",
        ["cultivar.name"] = "cultivar named {0}",
        ["soil.irrigate_below"] = "water given below {0} of the soil's store",
        [LeafAge] = "leaves {0}",
    };

    /// <summary>Keys that have a phrase.</summary>
    public static IReadOnlyCollection<string> Keys => Phrases.Keys;

    /// <summary>"rows 2 m apart instead of 2.4 m"; null stands for a value that is left out.</summary>
    public static string Of(string key, string? value, string? before)
    {
        var name = Phrases.GetValueOrDefault(key) ?? $"{Name(key)} {{0}}";
        return (value, before) switch
        {
            ({ } now, { } then) => $"{Say(now)} instead of {then}",
            ({ } now, null) => Say(now),
            (null, { } then) => $"not said: {Say(then)}",
            _ => "",
        };

        string Say(string text) => string.Format(CultureInfo.InvariantCulture, name, text);
    }

    /// <summary>A value in words: a choice without its dashes, shoots by length, what a curve of ages means.</summary>
    public static string Value(string key, string text, Scenario scenario, Units units) => key switch
    {
        Form => text.Replace('-', ' '),
        ShootsPerMeter => WorkPhrases.PerLength(text, units),
        LeafAge => Curve(scenario.LeafAge),
        _ => Quantities.ReadersUnits.Show(text, units).Replace('_', ' '),
    };

    /// <summary>"best at 30 to 40 days, at half at 113 days".</summary>
    public static string Curve(LeafAgeCurve curve)
    {
        var best = curve.Points.Max(point => point.Efficiency);
        var at = curve.Points.Where(point => point.Efficiency >= best - 1e-9).Select(point => point.Age).ToList();
        var last = curve.Points[^1].Age;
        double? half = null;
        for (var age = at[^1]; age <= last && half is null; age++)
            if (curve.At(age) <= 0.5 * best) half = age;
        var until = half is { } day ? $"at half at {Days(day)}" : $"never at half up to {Days(last)}";
        var peak = at.Count == 1 ? $"best at {Days(at[0])}" : $"best at {at[0]:0} to {Days(at[^1])}";
        return $"{peak}, {until}";

        static string Days(double age) => FormattableString.Invariant($"{age:0} days");
    }

    // "phyllochron (growth)": what it is, then where it belongs.
    private static string Name(string key)
    {
        var parts = ScenarioDifferences.Said(key).Split(", ");
        return parts.Length == 1 ? parts[0] : $"{parts[^1]} ({string.Join(", ", parts[..^1])})";
    }
}
