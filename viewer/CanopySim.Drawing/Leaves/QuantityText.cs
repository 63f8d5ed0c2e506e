using CanopySim.Files.Charts;

namespace CanopySim.Drawing.Leaves;

/// <summary>How quantities of leaves are named and written, for legends, panels and captions.</summary>
public static class QuantityText
{
    private const double SquareMetersPerSquareFoot = 0.09290304;

    /// <summary>Name on a button, in sentence case.</summary>
    public static string Name(LeafQuantity quantity) => quantity switch
    {
        LeafQuantity.Age => "Age",
        LeafQuantity.Efficiency => "Efficiency of its age",
        LeafQuantity.LightNow => "Light now",
        LeafQuantity.LightOfDay => "Light of the day",
        LeafQuantity.TemperatureNow => "Leaf temperature",
        LeafQuantity.AssimilationNow => "Assimilation now",
        LeafQuantity.CarbonOfDay => "Carbon of the day",
        LeafQuantity.RipeningShare => "Share in ripening",
        LeafQuantity.Shoot => "Shoot",
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "no such quantity"),
    };

    /// <summary>Unit of the numbers; empty where there is none.</summary>
    public static string Unit(LeafQuantity quantity, Units units = Units.Metric) => quantity switch
    {
        LeafQuantity.Age => "days",
        LeafQuantity.Efficiency => "% of its own best",
        LeafQuantity.LightNow => "µmol of PAR absorbed per m² and s",
        LeafQuantity.LightOfDay => "mol of PAR absorbed per m² and day",
        LeafQuantity.TemperatureNow => units == Units.Us ? "°F" : "°C",
        LeafQuantity.AssimilationNow => "µmol of CO₂ per m² and s",
        LeafQuantity.CarbonOfDay => units == Units.Us ? "g of CO₂ per ft² and day" : "g of CO₂ per m² and day",
        LeafQuantity.RipeningShare => "% of all leaves' gain while fruit ripened",
        LeafQuantity.Shoot => "",
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "no such quantity"),
    };

    /// <summary>The number of a value in the reader's units, without its unit.</summary>
    public static string Number(LeafQuantity quantity, double value, Units units = Units.Metric) => quantity switch
    {
        LeafQuantity.TemperatureNow when units == Units.Us => Measure.Number((value * 1.8) + 32, 1),
        LeafQuantity.CarbonOfDay when units == Units.Us => Measure.Number(value * SquareMetersPerSquareFoot, 2),
        LeafQuantity.Age or LeafQuantity.LightNow or LeafQuantity.Shoot or LeafQuantity.Efficiency =>
            Measure.Number(value, 0),
        LeafQuantity.RipeningShare => Measure.Number(value, 2),
        _ => Measure.Number(value, 1),
    };

    /// <summary>What a quantity shows in an hour without light; empty for those of a day.</summary>
    public static string InTheDark(LeafQuantity quantity) => quantity switch
    {
        LeafQuantity.LightNow => "none, since it is dark",
        LeafQuantity.TemperatureNow => "in the dark that of the air",
        LeafQuantity.AssimilationNow => "in the dark respiration alone",
        _ => "",
    };

    /// <summary>Whether the quantity changes through the day.</summary>
    public static bool ChangesByHour(LeafQuantity quantity) =>
        quantity is LeafQuantity.LightNow or LeafQuantity.TemperatureNow or LeafQuantity.AssimilationNow;
}
