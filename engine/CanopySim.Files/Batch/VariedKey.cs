using System.Globalization;
using CanopySim.Files.Quantities;

namespace CanopySim.Files.Batch;

/// <summary>A value of a varied key: as a scenario writes it, and its number where it has one.</summary>
/// <param name="Text">The text, with its unit.</param>
/// <param name="Number">In the unit of the key; null for a word, a date or a choice.</param>
public readonly record struct VariedValue(string Text, double? Number);

/// <summary>A key of the scenarios that differs between the seasons of a plan.</summary>
public sealed record VariedKey
{
    /// <summary>Dotted key, also the name of its column.</summary>
    public required string Key { get; init; }

    /// <summary>Where the plan names it.</summary>
    public required InputPlace Place { get; init; }

    /// <summary>Unit of its numbers; "1" for plain ones; null where it takes words.</summary>
    public required string? Unit { get; init; }

    /// <summary>True where it counts: what a distribution draws is rounded.</summary>
    public required bool IsWhole { get; init; }

    /// <summary>The values of a list or a range; empty for a distribution.</summary>
    public IReadOnlyList<VariedValue> Values { get; init; } = [];

    /// <summary>Null for a list or a range.</summary>
    public KeyDistribution? Distribution { get; init; }

    /// <summary>True where its column holds numbers.</summary>
    public bool IsNumber => Unit is not null;

    /// <summary>The value at a place of its distribution [0 to 1).</summary>
    public VariedValue At(double share)
    {
        var number = Distribution!.At(share);
        if (IsWhole) number = Math.Round(number, MidpointRounding.AwayFromZero);
        return ValueOf(number);
    }

    /// <summary>A number as a value of this key.</summary>
    public VariedValue ValueOf(double number) => new(QuantityText.Show(number, Unit!), number);

    /// <summary>How it varies, in words.</summary>
    public string Words => Distribution is { } spread
        ? spread.Words(Unit!)
        : Values.Count <= 8
            ? string.Join(", ", Values.Select(value => value.Text))
            : string.Create(CultureInfo.InvariantCulture, $"{Values[0].Text} to {Values[^1].Text}, {Values.Count} values");
}
