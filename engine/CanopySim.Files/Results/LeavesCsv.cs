using CanopySim.Results;
using static CanopySim.Files.Results.CsvColumn<CanopySim.Results.LeafRow>;

namespace CanopySim.Files.Results;

/// <summary>Writes <c>leaves.csv</c>: every leaf on the days that were asked for, and at harvest.</summary>
public static class LeavesCsv
{
    public const string FileName = "leaves.csv";

    private static readonly CsvColumn<LeafRow>[] Columns =
    [
        Date("date", row => row.Date),
        Whole("leaf_id", row => row.LeafId),
        Whole("vine", row => row.Vine),
        Whole("shoot", row => row.Shoot),
        Whole("order", row => row.Order),
        Whole("rank", row => row.Rank),
        Date("unfolded_on", row => row.UnfoldedOn),
        Whole("age_d", row => row.AgeD),
        Number("area_cm2", row => row.AreaCm2),
        Number("x_m", row => row.XM),
        Number("y_m", row => row.YM),
        Number("z_m", row => row.ZM),
        Number("efficiency", row => row.Efficiency),
        Number("absorbed_par_mol_d", row => row.AbsorbedParMolD),
        Number("net_assimilation_g_co2_d", row => row.NetAssimilationGCo2D),
    ];

    public static void Write(string path, IEnumerable<LeafRow> rows) => CsvTable.Write(path, Columns, rows);
}
