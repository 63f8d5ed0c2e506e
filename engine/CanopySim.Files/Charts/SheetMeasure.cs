using CanopySim.Results;

namespace CanopySim.Files.Charts;

/// <summary>Values of the canopy sheet in the reader's units.</summary>
internal static class SheetMeasure
{
    private static readonly Measure Share = new("%", "%", 1);

    /// <summary>A value with its unit: "14.2 per m", "24 %", "1.9".</summary>
    public static string Text(CanopySheetRow row, double value, Units units)
    {
        var number = Number(row, value, units);
        var unit = MeasureOf(row.Unit)?.Unit(units);
        return unit is null ? number : $"{number} {unit}";
    }

    /// <summary>The published range with its unit: "1.0 to 1.5".</summary>
    public static string Range(CanopySheetRow row, Units units)
    {
        var unit = MeasureOf(row.Unit)?.Unit(units) is { } name ? $" {name}" : "";
        return (row.Low, row.High) switch
        {
            ({ } low, { } high) => $"{End(low)} to {End(high)}{unit}",
            ({ } low, null) => $"{End(low)}{unit} or more",
            (null, { } high) => $"{End(high)}{unit} or less",
            _ => "–",
        };

        // Ends as they are printed: 10 to 20, 1 to 1.5.
        string End(double value) =>
            Number(row, value, units) is var text && text.Contains('.') ? text.TrimEnd('0').TrimEnd('.')
            : Number(row, value, units);
    }

    public static string Number(CanopySheetRow row, double value, Units units)
    {
        var measure = MeasureOf(row.Unit);
        double Shown(double metric) => (row.Unit == "share" ? 100 : 1) * (measure?.In(units, metric) ?? metric);
        var size = Math.Abs(Shown(row.High ?? value));
        var decimals = row.Unit == "share" || size >= 50 ? 0 : size >= 2 ? 1 : 2;
        return Measure.Number(Shown(value), decimals);
    }

    private static Measure? MeasureOf(string unit) => unit switch
    {
        "1/m" => Measure.PerLength,
        "cm" => Measure.Length,
        "cm2" => Measure.LeafAreaOfShoot,
        "m2/m" => Measure.LeafAreaPerLength,
        "m2/m3" => Measure.LeafAreaDensity,
        "m2/kg" => Measure.LeafAreaPerFruit,
        "kg/m" => Measure.MassPerLength,
        "share" => Share,
        "1" or "" => null,
        _ => throw new ArgumentException($"the canopy sheet has no unit {unit}", nameof(unit)),
    };
}
