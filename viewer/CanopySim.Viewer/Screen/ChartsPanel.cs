namespace CanopySim.Viewer.Screen;

/// <summary>The runner's charts, one at a time, beside the picture.</summary>
internal static class ChartsPanel
{
    public static void Add(Sheet sheet, Column column)
    {
        column.Buttons([.. ChartShelf.Offered.Select(chart => (
            $"chart.{chart.Stem}", chart.Caption, "↑ ↓", "Show this chart", sheet.State.Chart == chart.Stem,
            (Action)(() => sheet.Model.SetChart(chart.Stem))))]);
        column.Gap(8);
        sheet.Model.Charts.AddSeason(sheet, column);
    }
}
