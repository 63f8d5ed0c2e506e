using CanopySim.Files.Text;
using CanopySim.Results;

namespace CanopySim.Files.Batch;

/// <summary>
/// The table with the course of each season: a row every fifth day, the same days in all seasons, for fans and bands. States
/// are those of the day, flows the mean over the five days that end with it.
/// </summary>
public static class CoursesTable
{
    private const int Step = 5;

    private const int AgeClasses = 8;

    private static readonly (string Name, Func<DayRow, double?> Value)[] States =
    [
        ("thermal_time_degc_d", day => day.ThermalTimeDegCD),
        ("nodes_per_shoot", day => day.NodesPerShoot),
        ("shoot_length_cm", day => day.ShootLengthCm),
        ("leaf_area_m2_per_vine", day => day.LeafAreaM2PerVine),
        ("mean_leaf_age_d", day => day.MeanLeafAgeD),
        ("mean_leaf_efficiency", day => day.MeanLeafEfficiency),
        ("sugar_brix", day => day.SugarBrix),
        ("soil_water_fraction", day => day.SoilWaterFraction),
    ];

    private static readonly (string Name, Func<DayRow, double?> Value)[] Flows =
    [
        ("fraction_par_absorbed", day => day.FractionParAbsorbed),
        ("net_assimilation_g_co2_per_vine", day => day.NetAssimilationGCo2PerVine),
        ("transpiration_l_per_vine", day => day.TranspirationLPerVine),
        ("ripening_capacity_g_per_kg_d", day => day.RipeningCapacityGPerKgD),
    ];

    /// <summary>Width of a class of leaf age; the last one is open [d].</summary>
    public const int DaysOfAgeClass = 20;

    /// <summary>Columns of net assimilation by leaf age, the youngest first.</summary>
    public static IReadOnlyList<string> AgeColumns { get; } = [.. Enumerable.Range(0, AgeClasses).Select(AgeName)];

    public static TableSchema Schema { get; } = new(
    [
        new("item", true),
        new("date", false),
        new("day_of_year", true),
        .. States.Concat(Flows).Select(column => new TableColumn(column.Name, true)),
        .. AgeColumns.Select(name => new TableColumn(name, true)),
    ]);

    /// <summary>The rows of a season.</summary>
    public static IReadOnlyList<object?[]> Rows(int item, SeasonResult result, SeasonCalendar calendar)
    {
        var rows = new List<object?[]>();
        var ages = result.LeafAges.ToLookup(row => row.Date);
        for (var index = 0; index < result.Days.Count; index++)
        {
            var day = result.Days[index];
            var number = SeasonsTable.DayOf(day.Date, calendar);
            if (number % Step != 0) continue;
            var window = result.Days.Skip(Math.Max(0, index - Step + 1)).Take(Math.Min(Step, index + 1)).ToList();
            rows.Add(
            [
                (double)item,
                NumberText.Date(day.Date),
                (double)number,
                .. States.Select(column => Rounded(column.Value(day), column.Name)),
                .. Flows.Select(column => Rounded(Mean(window.Select(column.Value)), column.Name)),
                .. Enumerable.Range(0, AgeClasses).Select(age => Rounded(
                    window.Sum(one => ages[one.Date].Where(row => ClassOf(row) == age).Sum(row => row.NetAssimilationGCo2PerVine))
                        / window.Count,
                    AgeName(age))),
            ]);
        }

        return rows;
    }

    private static double? Mean(IEnumerable<double?> values) => values.Average();

    private static int ClassOf(LeafAgeRow row) => Math.Min(row.AgeFromD / DaysOfAgeClass, AgeClasses - 1);

    private static string AgeName(int number) => number == AgeClasses - 1
        ? FormattableString.Invariant($"net_assimilation_by_leaf_age.from_{DaysOfAgeClass * number}_d_g_co2_per_vine")
        : FormattableString.Invariant(
            $"net_assimilation_by_leaf_age.{DaysOfAgeClass * number}_to_{DaysOfAgeClass * (number + 1)}_d_g_co2_per_vine");

    // As in days.csv: six significant digits.
    private static object? Rounded(double? value, string name) => value is { } number
        ? double.Parse(NumberText.Rounded(number, name), System.Globalization.CultureInfo.InvariantCulture)
        : null;
}
