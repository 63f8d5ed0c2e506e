using System.Globalization;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Views;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Screen;

/// <summary>The nine quantities, age first, and the range of their colors.</summary>
internal static class ColorsPanel
{
    public static void Add(Sheet sheet, Column column)
    {
        var (model, state) = (sheet.Model, sheet.State);
        foreach (var quantity in Enum.GetValues<LeafQuantity>())
        {
            var number = ((int)quantity + 1).ToString(CultureInfo.InvariantCulture);
            sheet.Add(new PushButton
            {
                Name = $"color.{quantity.ToString().ToLowerInvariant()}",
                Bounds = column.Take(28),
                Caption = QuantityText.Name(quantity),
                Key = number,
                ShowsKey = true,
                IsLeft = true,
                IsOn = state.Quantity == quantity,
                Tip = Meaning(quantity),
                Act = () => model.SetQuantity(quantity),
            });
            column.Gap(4);
        }

        column.Gap(6);
        column.Text("color.meaning", Meaning(state.Quantity) + ".", isQuiet: true);
        if (state.Quantity != LeafQuantity.Shoot) AddRange(column, model, state);
        column.Rule("view.rule");
        column.Text("view.text", "Look", TextKind.Strong);
        column.Gap(4);
        column.Buttons(
            ("view.along", "Along the row", "W", "From the alley, along the row", false, () =>
                model.Look(ViewPoint.Along)),
            ("view.across", "Across it", "X", "Square to the row", false, () => model.Look(ViewPoint.Across)));
        column.Gap(4);
        column.Buttons(
            ("view.sun", "From the sun", "Q", "As the sun sees the row: what it sees is lit", false, () =>
                model.Look(ViewPoint.Sun)),
            ("view.above", "From above", "Z", "From above, the row running upwards", false, () =>
                model.Look(ViewPoint.Above)));
    }

    private static void AddRange(Column column, ScreenModel model, ViewState state)
    {
        column.Rule("color.rule");
        column.Text("color.range", "Range of the colors", TextKind.Strong);
        column.Gap(4);
        column.Buttons(
            ("range.fixed", "Always the same", "R", "The same range for every day and season, so that pictures compare",
                state.Range == RangeMode.Fixed,
                () => model.SetRange(RangeMode.Fixed)),
            ("range.fitted", "Fitted to these leaves", "R", "From the least to the most of the leaves in the picture",
                state.Range == RangeMode.Fitted,
                () => model.SetRange(RangeMode.Fitted)));
    }

    /// <summary>What a quantity says, in a sentence without its stop.</summary>
    public static string Meaning(LeafQuantity quantity) => quantity switch
    {
        LeafQuantity.Age =>
            "Days since the leaf unfolded: leaves are at their best about five weeks old and spent after about five "
                + "months",
        LeafQuantity.Efficiency => "What the leaf's age leaves of its own best photosynthetic capacity",
        LeafQuantity.LightNow => "Light (PAR) that the leaf takes up in this hour, for each area of leaf",
        LeafQuantity.LightOfDay => "Light (PAR) that the leaf takes up in the whole day, for each area of leaf",
        LeafQuantity.TemperatureNow =>
            "Temperature of the blade in this hour: in sun it is warmer than the air, at night it is taken to be as "
                + "warm",
        LeafQuantity.AssimilationNow =>
            "CO₂ that the leaf gains in this hour, its own respiration taken off; at night that alone, below 0",
        LeafQuantity.CarbonOfDay => "CO₂ that the leaf gains in 24 hours, the night's respiration taken off",
        LeafQuantity.RipeningShare =>
            "The leaf's part in all carbon that leaves gained while the fruit ripened; known once it has",
        _ => "Which shoot the leaf grew on, to tell neighbors apart",
    };
}
