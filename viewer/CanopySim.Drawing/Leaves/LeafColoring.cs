using CanopySim.Files.Charts;

namespace CanopySim.Drawing.Leaves;

/// <summary>
/// How values of a quantity become colors: a table of 256 and the range it spans. What a legend says follows from it.
/// </summary>
/// <param name="Quantity">What is shown.</param>
/// <param name="From">Value at the table's beginning.</param>
/// <param name="To">Value at its end.</param>
public sealed record LeafColoring(LeafQuantity Quantity, double From, double To)
{
    /// <summary>Share that stands for no value.</summary>
    public const float NoValue = -1;

    /// <summary>Blades without a value: between the surfaces of day and night, so that it is seen on both.</summary>
    public const uint NoValueRgb = 0xA5A79E;

    // The least span that is worth colors: below it all blades are alike.
    private const double LeastSpan = 1e-6;

    /// <summary>
    /// A range of the quantity's own, the same for every season and block, so that pictures can be put side by side.
    /// </summary>
    public static LeafColoring Fixed(LeafQuantity quantity) => quantity switch
    {
        LeafQuantity.Age => new(quantity, 0, ChartStyle.AgeClassDays * ChartStyle.AgeClasses.Count),
        LeafQuantity.Efficiency => new(quantity, 0, 100),
        LeafQuantity.LightNow => new(quantity, 0, 1500),
        LeafQuantity.LightOfDay => new(quantity, 0, 40),
        LeafQuantity.TemperatureNow => new(quantity, 10, 45),
        LeafQuantity.AssimilationNow => new(quantity, -2, 18),
        LeafQuantity.CarbonOfDay => new(quantity, -2, 22),
        LeafQuantity.RipeningShare => new(quantity, 0, 0.4),
        LeafQuantity.Shoot => new(quantity, 0, 256),
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "no such quantity"),
    };

    /// <summary>The range of the values at hand; the fixed one where there are none or all are alike.</summary>
    public static LeafColoring Fitted(LeafQuantity quantity, ReadOnlySpan<float> values)
    {
        if (quantity == LeafQuantity.Shoot) return Fixed(quantity);
        var (low, high) = (double.MaxValue, double.MinValue);
        foreach (var value in values)
        {
            if (!float.IsFinite(value)) continue;
            (low, high) = (Math.Min(low, value), Math.Max(high, value));
        }

        return high - low > LeastSpan ? new(quantity, low, high) : Fixed(quantity);
    }

    /// <summary>
    /// Where a value lies in the table, 0 to 1; <see cref="NoValue"/> for none. Beyond the ends the ends.
    /// </summary>
    public float ShareOf(float value)
    {
        if (!float.IsFinite(value)) return NoValue;
        if (Quantity == LeafQuantity.Shoot) return ShootColors.ShareOf((int)value);
        return (float)Math.Clamp((value - From) / (To - From), 0, 1);
    }

    /// <summary>Shares of all values.</summary>
    public float[] SharesOf(float[] values) => Array.ConvertAll(values, ShareOf);

    /// <summary>The 256 colors, 0xRRGGBB.</summary>
    public uint[] Table()
    {
        var table = new uint[256];
        for (var i = 0; i < table.Length; i++)
        {
            var share = i / (table.Length - 1.0);
            table[i] = Quantity switch
            {
                LeafQuantity.Age => ChartStyle.AgeColor(From + (share * (To - From))),
                LeafQuantity.Efficiency or LeafQuantity.RipeningShare => ShareRamp.At(share),
                LeafQuantity.Shoot => ShootColors.At(share),
                _ => Cividis.At(share),
            };
        }

        return table;
    }

    /// <summary>Color of a value, as it is drawn in full light.</summary>
    public uint ColorOf(float value)
    {
        var share = ShareOf(value);
        return share < 0 ? NoValueRgb : Table()[(int)Math.Round(share * 255)];
    }
}

/// <summary>
/// Shares of nothing to all: from grey to one green, darker as it grows. Lightness falls evenly, so that no hue needs
/// to be told.
/// </summary>
public static class ShareRamp
{
    private static readonly (double R, double G, double B) Nothing = (0xD9, 0xD8, 0xD2);
    private static readonly (double R, double G, double B) All = (0x1E, 0x4D, 0x2B);

    /// <summary>The color at a share, 0xRRGGBB.</summary>
    public static uint At(double share)
    {
        var s = Math.Clamp(share, 0, 1);
        return ((uint)Math.Round(Nothing.R + (s * (All.R - Nothing.R))) << 16)
            | ((uint)Math.Round(Nothing.G + (s * (All.G - Nothing.G))) << 8)
            | (uint)Math.Round(Nothing.B + (s * (All.B - Nothing.B)));
    }
}

/// <summary>
/// Colors that tell neighbors apart, also to the color-blind: seven of the set of Okabe &amp; Ito 2008, Color Universal
/// Design (from memory), without black.
/// </summary>
public static class ShootColors
{
    private static readonly uint[] Colors = [0xE69F00, 0x56B4E9, 0x009E73, 0xF0E442, 0x0072B2, 0xD55E00, 0xCC79A7];

    /// <summary>Where a shoot's color stands in the table.</summary>
    public static float ShareOf(int shoot) => ((shoot % Colors.Length) + 0.5f) / Colors.Length;

    /// <summary>The color at a share of the table.</summary>
    public static uint At(double share) => Colors[Math.Min(Colors.Length - 1, (int)(share * Colors.Length))];
}
