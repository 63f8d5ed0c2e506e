using CanopySim.Results;
using static CanopySim.Files.Results.CsvColumn<CanopySim.Results.LeafAgeRow>;

namespace CanopySim.Files.Results;

/// <summary>Writes <c>leaf_ages.csv</c>: area, light and carbon of the leaves by classes of age, day by day.</summary>
public static class LeafAgesCsv
{
    public const string FileName = "leaf_ages.csv";

    private static readonly CsvColumn<LeafAgeRow>[] Columns =
    [
        Date("date", row => row.Date),
        Whole("age_from_d", row => row.AgeFromD),
        Whole("age_to_d", row => row.AgeToD),
        Number("leaf_area_m2_per_vine", row => row.LeafAreaM2PerVine),
        Number("absorbed_par_mol_per_vine", row => row.AbsorbedParMolPerVine),
        Number("net_assimilation_g_co2_per_vine", row => row.NetAssimilationGCo2PerVine),
        Number("mean_efficiency", row => row.MeanEfficiency),
    ];

    public static void Write(string path, IEnumerable<LeafAgeRow> rows) => CsvTable.Write(path, Columns, rows);
}
