using CanopySim.Files.Results;

namespace CanopySim.Files.Comparison;

/// <summary>
/// Writes <c>compare.csv</c>: a row an option, the numbers and dates of its <c>summary.json</c> flattened with dots,
/// and
/// its warnings. How a column is named: <see cref="FlatSummary"/>.
/// </summary>
public static class CompareCsv
{
    public const string FileName = "compare.csv";

    /// <param name="path">The file.</param>
    /// <param name="options">Name and text of <c>summary.json</c> of each option.</param>
    public static void Write(string path, IReadOnlyList<(string Name, string SummaryJson)> options)
    {
        var rows = options.Select(option => (option.Name, Cells: FlatSummary.Of(option.SummaryJson))).ToList();
        var names = FlatSummary.Columns([.. rows.Select(row => row.Cells)]);
        CsvTable.Write(
            path,
            [
                CsvColumn<(string Name, IReadOnlyDictionary<string, string> Cells)>.Words("option", row => row.Name),
                .. names.Select(name => CsvColumn<(string Name, IReadOnlyDictionary<string, string> Cells)>.Words(
                    name, row => row.Cells.GetValueOrDefault(name, ""))),
            ],
            rows);
    }
}
