using System.Globalization;
using System.Text.RegularExpressions;
using CanopySim.Files.Quantities;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Text;
using CanopySim.Parameters;

namespace CanopySim.Files.Batch;

/// <summary>Reads a varied key of a plan by what scenarios say of it: its unit, its range, its words.</summary>
internal sealed partial class VariedKeyReader(ScenarioBinder binder, IReadOnlyList<PlanScenario> scenarios)
{
    // What a season is, and where it is read from, is said elsewhere in a plan.
    private static readonly Dictionary<string, string> SaidElsewhere = new(StringComparer.Ordinal)
    {
        ["name"] = "scenarios",
        ["based_on"] = "scenarios",
        ["seed"] = "seed and replicates",
        ["season.year"] = "weather.years",
        ["weather.file"] = "weather.files",
        ["weather.seed"] = "weather.seeds",
    };

    // How a file is read is settled once for all its seasons.
    private static readonly string[] OfReading =
        ["weather.columns", "weather.fill_gaps", "weather.hour_stamp", "site.time_zone"];

    /// <exception cref="InputError">The key is none that a plan may set.</exception>
    public static void CheckFree(string key, InputPlace place, string planKey)
    {
        if (SaidElsewhere.TryGetValue(key, out var where))
            throw new InputError(place, "a key that a plan says elsewhere", $"{where} of the plan", planKey);
    }

    public VariedKey Read(string key, VariedText text)
    {
        var planKey = $"vary.{key}";
        var place = binder.PlaceOf(planKey);
        CheckFree(key, place, planKey);
        if (OfReading.Any(fixedKey => key == fixedKey || key.StartsWith(fixedKey + ".", StringComparison.Ordinal)))
            throw new InputError(
                place, "a key that says how a weather file is read", "one that the season depends on", planKey);
        var shape = SectionShape.Root.At(key) ?? throw Unknown(key, place, planKey);
        var parameter = shape.Kind == KeyKind.Quantity ? shape.Parameter : null;
        if (shape.Kind is KeyKind.Section or KeyKind.SectionList or KeyKind.RowList or KeyKind.TextMap)
            throw new InputError(place, "a section or a list", "a key with a single value", planKey);
        var varied = new VariedKey
        {
            Key = key,
            Place = place,
            Unit = parameter?.Unit ?? (shape.Kind == KeyKind.WholeNumber ? "1" : null),
            IsWhole = shape.ValueType == typeof(int) || shape.Kind == KeyKind.WholeNumber,
        };
        varied = text.Distribution is { } kind
            ? varied with { Distribution = Distribution(kind, text, parameter, planKey) }
            : varied with { Values = Values(text, varied, parameter, shape, planKey) };
        TryInScenarios(varied);
        return varied;
    }

    private IReadOnlyList<VariedValue> Values(
        VariedText text, VariedKey key, ParameterAttribute? parameter, KeyShape shape, string planKey)
    {
        foreach (var name in new[] { "mean", "standard_deviation", "most_likely", "median", "spread" })
            NotGiven(planKey, name, "values, or from, to and steps", "a distribution");
        if (text.Values.Count > 0)
        {
            foreach (var name in new[] { "from", "to", "steps" }) NotGiven(planKey, name, "values alone", "a range");
            List<VariedValue> values = [.. text.Values.Select((value, i) => Listed(value, i))];
            var twice = values.GroupBy(value => value.Text).FirstOrDefault(group => group.Count() > 1);
            if (twice is not null)
                throw new InputError(
                    binder.PlaceOf($"{planKey}.values"), $"{InputError.Quote(twice.Key)} twice", "each value once", planKey);
            return values;
        }

        if (parameter is null || text.From is null || text.To is null || text.Steps is not { } steps)
            throw new InputError(
                binder.PlaceOf(planKey), "nothing that says how it varies",
                parameter is null ? "values: a list" : "values; or from, to and steps; or a distribution", planKey);
        var (from, to) = Ends(text, parameter, planKey);
        return [.. Enumerable.Range(0, steps).Select(step =>
        {
            var number = step == steps - 1 ? to : from + ((to - from) * step / (steps - 1));
            if (key.IsWhole && Math.Round(number) != number)
                throw new InputError(
                    binder.PlaceOf($"{planKey}.steps"), $"{number.ToString(CultureInfo.InvariantCulture)} among the values",
                    "steps that give whole numbers", $"{planKey}.steps");
            return key.ValueOf(number);
        })];

        VariedValue Listed(string value, int index)
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"{planKey}.values.{index}");
            if (parameter is not null) return new VariedValue(value, Quantity(value, parameter, at));
            var read = ValueReader.Read(new ValueNode(binder.PlaceOf(at), value, false), shape, binder.PlaceOf(at), at);
            return new VariedValue(value, key.IsNumber ? Convert.ToDouble(read, CultureInfo.InvariantCulture) : null);
        }
    }

    private KeyDistribution Distribution(DistributionKind kind, VariedText text, ParameterAttribute? parameter, string planKey)
    {
        if (parameter is null)
            throw new InputError(
                binder.PlaceOf($"{planKey}.distribution"), "a distribution for words", "values: a list", planKey);
        var used = kind switch
        {
            DistributionKind.Uniform => (string[])[],
            DistributionKind.Normal => ["mean", "standard_deviation"],
            DistributionKind.Triangular => ["most_likely"],
            _ => ["median", "spread"],
        };
        foreach (var name in new[] { "values", "steps", "mean", "standard_deviation", "most_likely", "median", "spread" })
            if (!used.Contains(name)) NotGiven(planKey, name, string.Join(", ", ["from", "to", .. used]), $"a {KeyNames.Choice(kind)} distribution");
        var hasEnds = kind is DistributionKind.Uniform or DistributionKind.Triangular;
        foreach (var name in (string[])[.. hasEnds ? ["from", "to"] : (string[])[], .. used])
            if (!binder.IsGiven($"{planKey}.{name}"))
                throw new InputError(
                    binder.PlaceOf(planKey), "missing", $"what a {KeyNames.Choice(kind)} distribution needs", $"{planKey}.{name}");
        var (from, to) = Ends(text, parameter, planKey);
        var center = kind switch
        {
            DistributionKind.Normal => Quantity(text.Mean!, parameter, $"{planKey}.mean"),
            DistributionKind.Triangular => Quantity(text.MostLikely!, parameter, $"{planKey}.most_likely"),
            DistributionKind.Lognormal => Quantity(text.Median!, parameter, $"{planKey}.median"),
            _ => 0,
        };
        if (kind != DistributionKind.Uniform && (center < from || center > to))
            throw new InputError(
                binder.PlaceOf($"{planKey}.{used[0]}"), QuantityText.Show(center, parameter.Unit),
                $"a value within {QuantityText.Show(from, "1")} to {QuantityText.Show(to, parameter.Unit)}", $"{planKey}.{used[0]}");
        if (kind == DistributionKind.Lognormal && center <= 0)
            throw new InputError(
                binder.PlaceOf($"{planKey}.median"), QuantityText.Show(center, parameter.Unit), "more than 0", $"{planKey}.median");
        var spread = kind switch
        {
            DistributionKind.Normal => Width(text.StandardDeviation!, parameter, $"{planKey}.standard_deviation"),
            DistributionKind.Lognormal => text.Spread!.Value,
            _ => 0,
        };
        return new KeyDistribution(kind, from, to, center, spread);
    }

    // Left out, the ends are those of the key itself.
    private (double From, double To) Ends(VariedText text, ParameterAttribute parameter, string planKey)
    {
        var from = text.From is { } least ? Quantity(least, parameter, $"{planKey}.from") : parameter.Min;
        var to = text.To is { } most ? Quantity(most, parameter, $"{planKey}.to") : parameter.Max;
        return from < to
            ? (from, to)
            : throw new InputError(
                binder.PlaceOf($"{planKey}.to"), QuantityText.Show(to, parameter.Unit),
                $"more than {QuantityText.Show(from, parameter.Unit)}", $"{planKey}.to");
    }

    // A width is a difference: 2 degF are 1.1 K wide, not so far from freezing.
    private double Width(string value, ParameterAttribute parameter, string key)
    {
        var span = parameter.Max - parameter.Min;
        var widths = new ParameterAttribute(parameter.Unit, -span, span, "");
        var width = parameter.Unit == "degC"
            ? Quantity(value, Any(widths), key) - Quantity(LeadingNumber().Replace(value, "0"), Any(widths), key)
            : Quantity(value, widths, key);
        return width > 0 && width <= span
            ? width
            : throw new InputError(
                binder.PlaceOf(key), InputError.Quote(value),
                $"a width above 0, at most {QuantityText.Show(span, parameter.Unit)}", key);

        static ParameterAttribute Any(ParameterAttribute one) => new(one.Unit, -1e6, 1e6, "");
    }

    private double Quantity(string text, ParameterAttribute parameter, string key) =>
        (double)ValueReader.Quantity(text, parameter, typeof(double), binder.PlaceOf(key), key);

    private void NotGiven(string planKey, string name, string expected, string what)
    {
        if (binder.IsGiven($"{planKey}.{name}"))
            throw new InputError(
                binder.PlaceOf($"{planKey}.{name}"), $"not a part of {what}", expected, $"{planKey}.{name}");
    }

    // Every scenario must take the ends, or the words: what fits by itself may not fit the rest. What one of many draws does
    // to the others is told when it is grown.
    private void TryInScenarios(VariedKey key)
    {
        var tried = key.Distribution is null ? key.Values : [key.At(0.5)];
        foreach (var scenario in scenarios)
            foreach (var value in tried.Count <= 8 ? tried : [tried[0], tried[^1]])
                scenario.Template.Document(new ScenarioChange(key.Key, value.Text, key.Place));
    }

    private static InputError Unknown(string key, InputPlace place, string planKey)
    {
        var nearest = NearestName.Among(key, SectionShape.Root.AllKeys());
        return new InputError(place, $"unknown key {InputError.Quote(key)}", "a key of scenarios, as rows.spacing", planKey, nearest);
    }

    [GeneratedRegex(@"^\s*[+-]?[0-9.]+(?:[eE][+-]?[0-9]+)?")]
    private static partial Regex LeadingNumber();
}
