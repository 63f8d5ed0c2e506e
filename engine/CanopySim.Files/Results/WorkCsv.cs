using CanopySim.Training;
using static CanopySim.Files.Results.CsvColumn<CanopySim.Training.WorkDone>;

namespace CanopySim.Files.Results;

/// <summary>
/// Writes <c>work.csv</c>: what was done in the canopy, step by step. Shoots, clusters and leaves are those of the
/// whole cell; leaf area and fruit are what went, or what a spray reached, per vine.
/// </summary>
public static class WorkCsv
{
    public const string FileName = "work.csv";

    private static readonly CsvColumn<WorkDone>[] Columns =
    [
        Date("date", row => row.Date),
        new("action", row => row.Action),
        Words("what", row => row.What),
        Whole("shoots", row => row.Shoots),
        Whole("clusters", row => row.Clusters),
        Whole("leaves", row => row.Leaves),
        Number("leaf_area_m2_per_vine", row => row.LeafAreaM2PerVine),
        Number("fruit_g_per_vine", row => row.FruitGPerVine),
    ];

    public static void Write(string path, IEnumerable<WorkDone> rows) => CsvTable.Write(path, Columns, rows);
}
