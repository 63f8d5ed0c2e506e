using CanopySim.Files.Charts;

namespace CanopySim.Viewer.Screen;

/// <summary>The chosen leaf: a sentence, its numbers in this hour, its course through the season.</summary>
internal static class LeafPanel
{
    public static void Add(Sheet sheet, Column column)
    {
        var model = sheet.Model;
        if (sheet.State.LeafId is not { } leaf)
        {
            column.Text("leaf.none",
                "No leaf is chosen. Click one in the picture, or press N for the largest and then for the next.");
            column.Gap(10);
            AddSteps(sheet, column);
            return;
        }

        var index = model.Leaves.IndexOf(sheet.State.Day, leaf);
        if (index < 0)
        {
            column.Text("leaf.sentence", model.Leaves.Course(leaf) is [var first, .., var last]
                ? $"This leaf does not hang today: it hung from {ChartAxis.DayText(first.Date, isShort: false)} "
                    + $"to {ChartAxis.DayText(last.Date, isShort: false)}."
                : "This leaf does not hang today.");
        }
        else
        {
            var now = LeafNow.Of(model.Recording, sheet.State.Day, sheet.State.Hour, index);
            column.Text("leaf.sentence", now.Sentence(), TextKind.Strong);
        }

        column.Gap(8);
        model.Charts.AddLeaf(sheet, column, leaf);
        column.Gap(8);
        if (index >= 0)
        {
            var row = 0;
            foreach (var (what, value) in LeafNow.Of(model.Recording, sheet.State.Day, sheet.State.Hour, index)
                .Rows(sheet.State.Units, sheet.State.Hour, model.ShareOf(leaf)))
                column.Pair($"leaf.row.{row++}", what, value);
            column.Gap(8);
        }

        AddSteps(sheet, column);
    }

    private static void AddSteps(Sheet sheet, Column column)
    {
        var model = sheet.Model;
        column.Buttons(
            ("leaf.back", "Leaf before", "B", "The leaf below on its shoot", false, () => model.StepLeaf(-1)),
            ("leaf.next", "Next leaf", "N", "The leaf above on its shoot; with none chosen, the largest", false, () =>
                model.StepLeaf(1)));
    }
}
