using CanopySim.Results;
using static CanopySim.Files.Results.CsvColumn<CanopySim.Results.DayRow>;

namespace CanopySim.Files.Results;

/// <summary>Writes <c>days.csv</c>: the season day by day.</summary>
public static class DaysCsv
{
    public const string FileName = "days.csv";

    private static readonly CsvColumn<DayRow>[] Columns =
    [
        Date("date", row => row.Date),
        new("stage", row => row.Stage),
        Number("thermal_time_degc_d", row => row.ThermalTimeDegCD),
        Number("nodes_per_shoot", row => row.NodesPerShoot),
        Number("shoot_length_cm", row => row.ShootLengthCm),
        Number("leaf_area_m2_per_vine", row => row.LeafAreaM2PerVine),
        Number("lateral_leaf_area_m2_per_vine", row => row.LateralLeafAreaM2PerVine),
        Optional("mean_leaf_age_d", row => row.MeanLeafAgeD),
        Optional("mean_leaf_efficiency", row => row.MeanLeafEfficiency),
        Number("incident_par_mol_m2", row => row.IncidentParMolM2),
        Number("absorbed_par_mol_per_vine", row => row.AbsorbedParMolPerVine),
        Number("fraction_par_absorbed", row => row.FractionParAbsorbed),
        Number("net_assimilation_g_co2_per_vine", row => row.NetAssimilationGCo2PerVine),
        Number("respiration_g_co2_per_vine", row => row.RespirationGCo2PerVine),
        Number("reserves_g_per_vine", row => row.ReservesGPerVine),
        Number("fruit_dry_mass_g_per_vine", row => row.FruitDryMassGPerVine),
        Optional("sugar_brix", row => row.SugarBrix),
        Optional("ripening_capacity_g_per_kg_d", row => row.RipeningCapacityGPerKgD),
        Number("transpiration_l_per_vine", row => row.TranspirationLPerVine),
        Number("soil_water_fraction", row => row.SoilWaterFraction),
        Number("growing_tips_fraction", row => row.GrowingTipsFraction),
        Optional("leaf_area_unsprayed_m2_per_vine", row => row.LeafAreaUnsprayedM2PerVine),
    ];

    public static void Write(string path, IEnumerable<DayRow> rows) => CsvTable.Write(path, Columns, rows);
}
