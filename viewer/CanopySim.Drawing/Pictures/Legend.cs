using CanopySim.Drawing.Leaves;
using CanopySim.Files.Charts;

namespace CanopySim.Drawing.Pictures;

/// <summary>A number beside the legend's bar.</summary>
/// <param name="Share">Where, 0 to 1.</param>
/// <param name="Text">The number.</param>
public readonly record struct LegendNumber(double Share, string Text);

/// <summary>What a legend says of a coloring: title, unit and numbers.</summary>
public sealed record Legend(string Title, string Unit, IReadOnlyList<LegendNumber> Numbers, uint[] Table)
{
    // Steps between numbers, as a share of a power of ten.
    private static readonly double[] Steps = [1, 2, 2.5, 4, 5, 10];

    /// <summary>Of a coloring, in the reader's units; a shoot has a color but no number.</summary>
    public static Legend Of(LeafColoring coloring, Units units)
    {
        var quantity = coloring.Quantity;
        var title = QuantityText.Name(quantity);
        if (quantity == LeafQuantity.Shoot) return new Legend(title, "each shoot another color than its neighbors", [],
            coloring.Table());
        return new Legend(title, QuantityText.Unit(quantity, units), [.. NumbersOf(coloring, units)], coloring.Table());
    }

    // Round numbers in the reader's units, four to six of them. Only temperatures and carbon have other units; both are
    // linear.
    private static IEnumerable<LegendNumber> NumbersOf(LeafColoring coloring, Units units)
    {
        var (from, to) = (In(coloring.From), In(coloring.To));
        var step = StepFor(to - from);
        var decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(step) + 1e-9));
        if (Math.Abs((step * Math.Pow(10, decimals)) - Math.Round(step * Math.Pow(10, decimals))) > 1e-6) decimals++;
        for (var value = Math.Ceiling((from / step) - 1e-6) * step; value <= to + (1e-6 * step); value += step)
        {
            var share = (value - from) / (to - from);
            // What lies beyond the table's end has its last color.
            var isOpen = coloring.Quantity != LeafQuantity.Efficiency && share > 1 - 1e-6;
            yield return new LegendNumber(Math.Clamp(share, 0, 1), Measure.Number(value, decimals)
                + (isOpen ? " +" : ""));
        }

        double In(double value) => (coloring.Quantity, units) switch
        {
            (LeafQuantity.TemperatureNow, Units.Us) => (value * 1.8) + 32,
            (LeafQuantity.CarbonOfDay, Units.Us) => value / Measure.LeafArea.UsPerMetric,
            _ => value,
        };
    }

    // A round step of which the span holds about five; rather one that ends with it.
    private static double StepFor(double span)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(span / 5)));
        var steps = Steps.Select(step => step * power).ToArray();
        foreach (var step in steps)
        {
            var count = span / step;
            if (count is >= 3.9 and <= 6.1 && Math.Abs(count - Math.Round(count)) < 1e-6) return step;
        }

        return steps.First(step => step >= span / 5 * (1 - 1e-9));
    }
}
