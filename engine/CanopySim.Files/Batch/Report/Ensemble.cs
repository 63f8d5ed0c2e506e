using System.Globalization;
using CanopySim.Files.Charts;

namespace CanopySim.Files.Batch.Report;

/// <summary>How a number is spread over the seasons of a scenario: how many have it, then its tenths and quarters from below.</summary>
public readonly record struct Spread(int Seasons, double P10, double P25, double P50, double P75, double P90);

/// <summary>A quantity of the table of seasons as pages show it.</summary>
/// <param name="Column">Its column.</param>
/// <param name="Name">Its name with the unit.</param>
/// <param name="Decimals">Decimals of its numbers.</param>
public sealed record Outcome(string Column, string Name, int Decimals)
{
    /// <summary>Day of the year on which the fruit reaches the target sugar.</summary>
    public static Outcome Ripeness { get; } = new("dates.target_sugar" + SeasonsTable.DayOfYear, "Day on which the target sugar is reached, d", 1);

    public static Outcome Sugar { get; } = new("harvest.sugar_brix", "Sugar at the end, Brix", 1);

    /// <summary>Dates, in the order of the year.</summary>
    public static IReadOnlyList<Outcome> Stages { get; } =
    [
        new("dates.budbreak" + SeasonsTable.DayOfYear, "Budbreak", 0),
        new("dates.bloom" + SeasonsTable.DayOfYear, "Bloom", 0),
        new("dates.veraison" + SeasonsTable.DayOfYear, "Veraison", 0),
        Ripeness with { Name = "Target sugar" },
    ];

    /// <summary>Amounts, which a page shows and sensitivities are computed of.</summary>
    public static IReadOnlyList<Outcome> Amounts { get; } =
    [
        Sugar,
        new("harvest.yield_kg_per_vine", "Yield, kg a vine", 2),
        new("harvest.leaf_area_m2_per_kg_fruit", "Leaf area for fruit, m²/kg", 2),
        new("canopy.leaf_area_m2_per_m", "Leaf area at veraison, m²/m", 2),
        new("ripening_capacity_g_per_kg_d", "Ripening capacity, g/kg a day", 2),
        new("season.net_assimilation_kg_co2_per_vine", "Carbon gain, kg CO₂ a vine", 2),
        new("season.transpiration_l_per_vine", "Transpiration, L a vine", 0),
    ];

    public string Text(double value) => Measure.Number(value, Decimals);
}

/// <summary>What all seasons of a scenario have in common and in what they differ, asked of the merged tables.</summary>
public sealed class Ensemble(BatchQuery query, string scenario)
{
    /// <summary>Days of a column of the histogram of ripening.</summary>
    public const int DaysOfColumn = 5;

    public string Scenario { get; } = scenario;

    /// <summary>Seasons that were grown.</summary>
    public int Seasons { get; } = (int)Numbers(query.Ask($"SELECT count(*) FROM seasons WHERE scenario = {Text(scenario)}", default))[0][0];

    /// <summary>The spread of a quantity; null where no season has it.</summary>
    public Spread? Of(Outcome outcome)
    {
        var row = Ask($"SELECT {Spreads(outcome.Column)} FROM seasons WHERE scenario = {Text(Scenario)} AND {Name(outcome.Column)} IS NOT NULL");
        return row[0][0] > 0 ? SpreadOf(row[0], 0) : null;
    }

    /// <summary>
    /// The spread of sugar on every fifth day on which at least half of the seasons have fruit that ripens, or ripened: a season
    /// that has ended keeps its last sugar, or the slowest alone would make the late days.
    /// </summary>
    public IReadOnlyList<(int Day, Spread Brix)> SugarCourse()
    {
        var ripening = $"(SELECT item, day_of_year, sugar_brix FROM courses WHERE scenario = {Text(Scenario)} AND sugar_brix IS NOT NULL)";
        var rows = Ask($"""
            SELECT days.day_of_year, {Spreads("sugar_brix")}
            FROM (SELECT day_of_year, item FROM (SELECT DISTINCT day_of_year FROM {ripening}) CROSS JOIN (SELECT DISTINCT item FROM {ripening})) days
            ASOF JOIN {ripening} known ON days.item = known.item AND days.day_of_year >= known.day_of_year
            GROUP BY days.day_of_year ORDER BY days.day_of_year
            """);
        return [.. rows.Where(row => row[1] >= Seasons / 2.0).Select(row => ((int)row[0], SpreadOf(row, 1)))];
    }

    /// <summary>Seasons that reach the target sugar, by five days: first day of each and how many.</summary>
    public IReadOnlyList<(int Day, int Seasons)> RipeningDays()
    {
        var day = Name(Outcome.Ripeness.Column);
        var rows = Ask($"SELECT floor({day} / {DaysOfColumn}) * {DaysOfColumn} AS first, count(*) FROM seasons WHERE scenario = {Text(Scenario)} AND {day} IS NOT NULL GROUP BY first ORDER BY first");
        return [.. rows.Select(row => ((int)row[0], (int)row[1]))];
    }

    /// <summary>Net assimilation by class of leaf age, mean of the seasons that go on, on days that at least half of them have [g CO₂ a vine and day].</summary>
    public IReadOnlyList<(int Day, double[] ByAge)> CarbonCourse()
    {
        var means = string.Join(", ", CoursesTable.AgeColumns.Select(column => $"avg({Name(column)})"));
        var rows = Ask($"SELECT day_of_year, count(*), {means} FROM courses WHERE scenario = {Text(Scenario)} GROUP BY day_of_year ORDER BY day_of_year");
        return [.. rows.Where(row => row[1] >= Seasons / 2.0).Select(row => ((int)row[0], row[2..]))];
    }

    /// <summary>
    /// Mean of a quantity over all seasons of a point of the design; null for a point of which one season is missing or lacks it.
    /// </summary>
    /// <param name="outcome">The quantity.</param>
    /// <param name="items">The plan's list.</param>
    public double?[] ByPoint(Outcome outcome, PlanItems items)
    {
        var column = Name(outcome.Column);
        var point = string.Create(CultureInfo.InvariantCulture, $"((CAST(item AS BIGINT) - 1) // {items.Replicates}) % {items.Points.Count}");
        var rows = Ask($"SELECT {point} AS point, count({column}), avg({column}) FROM seasons WHERE scenario = {Text(Scenario)} AND {column} IS NOT NULL GROUP BY point ORDER BY point");
        var means = new double?[items.Points.Count];
        foreach (var row in rows)
            if ((int)row[1] == items.SeasonsOfPoint) means[(int)row[0]] = row[2];
        return means;
    }

    private List<double[]> Ask(string sql) => Numbers(query.Ask(sql, default));

    private static List<double[]> Numbers(QueryResult result) =>
        [.. result.Rows.Select(row => row.Select(cell => cell is null ? double.NaN : double.Parse(cell, CultureInfo.InvariantCulture)).ToArray())];

    private static Spread SpreadOf(double[] row, int from) =>
        new((int)row[from], row[from + 1], row[from + 2], row[from + 3], row[from + 4], row[from + 5]);

    private static string Spreads(string column) =>
        $"count({Name(column)}), " + string.Join(", ", ((string[])["0.1", "0.25", "0.5", "0.75", "0.9"]).Select(share => $"quantile_cont({Name(column)}, {share})"));

    private static string Name(string column) => $"\"{column}\"";

    private static string Text(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";
}
