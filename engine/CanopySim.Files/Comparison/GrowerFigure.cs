using CanopySim.Files.Charts;
using CanopySim.Results;

namespace CanopySim.Files.Comparison;

/// <summary>A number that a grower compares options by.</summary>
/// <param name="Name">What it is, for a page.</param>
/// <param name="Head">The same in a word or two, for a narrow column.</param>
/// <param name="Unit">Its unit in a system of units; empty for a plain number.</param>
/// <param name="Decimals">Decimals that are shown.</param>
/// <param name="Of">The number of a season in those units; null where there is none.</param>
public sealed record GrowerFigure(
    string Name, string Head, Func<Units, string> Unit, int Decimals, Func<SeasonSummary, Units, double?> Of)
{
    private const string None = "–";

    /// <summary>In the order in which a grower reads them.</summary>
    public static IReadOnlyList<GrowerFigure> All { get; } =
    [
        Plain("Sugar at the end", "sugar", "Brix", 1, s => s.Harvest?.SugarBrix),
        In("Yield of the block", "yield", Measure.YieldPerArea, 1, s => s.Harvest?.YieldTPerHa),
        In("Leaf area for each weight of fruit", "leaf/fruit", Measure.LeafAreaPerFruit, 2,
            s => s.Harvest?.LeafAreaM2PerKgFruit),
        In("Leaf area along the canopy", "leaf", Measure.LeafAreaPerLength, 1, s => s.Canopy?.LeafAreaM2PerM),
        Plain("Leaf layers in the fruit zone", "layers", "", 1, s => s.Canopy?.LeafLayerNumber),
        Plain("Gaps in the fruit zone", "gaps", "%", 0, s => 100 * s.Canopy?.GapFraction),
        In("Ripening capacity, a day", "ripening", Measure.SugarPerFruit, 1, s => s.RipeningCapacityGPerKgD),
        In("Prunings a vine", "prunings", Measure.Mass, 2, s => s.Harvest?.PruningsKgPerVine),
        In("Water transpired a vine", "water", Measure.Volume, 0, s => s.Season.TranspirationLPerVine),
        Plain("Light on the clusters, of that over the canopy", "fruit light", "%", 0,
            s => 100 * s.FruitLight?.ShareOfIncident),
        Temperature("Warmest spot on the fruit", "warmest", s => s.FruitHeat?.HighestSurfaceDegC),
        Plain("Fruit warm enough to brown, worse side", "browning", "h", 1,
            s => s.FruitHeat?.Sides.Max(side => side.HoursAtBrowning)),
        Plain("Fruitfulness of next year's buds, of the best", "buds", "%", 0, s => 100 * s.NextYear?.Fruitfulness),
    ];

    /// <summary>The number, without its unit.</summary>
    public string Number(SeasonSummary summary, Units units) =>
        Of(summary, units) is { } value && double.IsFinite(value) ? Measure.Number(value, Decimals) : None;

    /// <summary>The number with its unit.</summary>
    public string Text(SeasonSummary summary, Units units) => (Number(summary, units), Unit(units)) switch
    {
        (None, _) => None,
        (var number, "") => number,
        var (number, unit) => $"{number} {unit}",
    };

    /// <summary>
    /// How much more it is than in another season: "+0.3", "−0.3", "same" where no shown digit differs.
    /// </summary>
    public string Difference(SeasonSummary summary, SeasonSummary other, Units units)
    {
        if (Of(summary, units) is not { } value || Of(other, units) is not { } before
            || !double.IsFinite(value - before)) return None;
        var text = Measure.Number(value - before, Decimals);
        return text.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? "same" : text.StartsWith('−') ? text : $"+{text}";
    }

    private static GrowerFigure Plain(
        string name, string head, string unit, int decimals, Func<SeasonSummary, double?> of) =>
        new(name, head, _ => unit, decimals, (summary, _) => of(summary));

    private static GrowerFigure Temperature(string name, string head, Func<SeasonSummary, double?> of) =>
        new(name, head, units => units == Units.Us ? "°F" : "°C", 0,
            (summary, units) => of(summary) is { } celsius
                ? units == Units.Us ? (1.8 * celsius) + 32 : celsius
                : null);

    private static GrowerFigure In(
        string name, string head, Measure measure, int decimals, Func<SeasonSummary, double?> of) =>
        new(name, head, measure.Unit, decimals,
            (summary, units) => of(summary) is { } metric ? measure.In(units, metric) : null);
}
