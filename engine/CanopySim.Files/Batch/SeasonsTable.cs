using System.Globalization;
using CanopySim.Assessment;
using CanopySim.Files.Results;
using CanopySim.Files.Scenarios;
using CanopySim.Results;
using CanopySim.Training;

namespace CanopySim.Files.Batch;

/// <summary>
/// The table with a row a season: which one it is, what was varied, then the numbers of its summary under the names of
/// <c>compare.csv</c>. Dates stand as text and as day of the spring's year, which goes on over New Year. Times of
/// computing are left out, so that a season's row is always the same.
/// </summary>
public sealed class SeasonsTable
{
    public const string DayOfYear = "_day_of_year";

    private const string Dates = "dates.";
    private const string LeafAges = "ripening_carbon_by_leaf_age.";
    private const string EndReason = "end_reason";
    private const string WeatherSeed = "weather.seed";

    // No leaf is older than the longest season.
    private const int OldestLeafDays = 310;

    private static readonly string[] ScoreItems =
        ["gaps", "leaf_layers", "exposed_fruit", "shoot_nodes", "laterals", "growing_tips"];

    // What a summary says of the run and not of the season, or says twice.
    private static readonly string[] LeftOut = ["seed", "seconds."];

    private readonly BatchPlan _plan;
    private readonly bool _hasWeatherSeed;

    public SeasonsTable(BatchPlan plan)
    {
        _plan = plan;
        _hasWeatherSeed = plan.Weather.Any(weather => weather.Seed is not null);
        List<TableColumn> columns =
            [new("item", true), new("scenario", false), new("weather", false), new("year", true), new("seed", true)];
        if (_hasWeatherSeed) columns.Add(new(WeatherSeed, true));
        columns.AddRange(plan.Varied.Select(key => new TableColumn(key.Key, key.IsNumber)));
        columns.AddRange(SummaryColumns(plan));
        columns.Add(new(EndReason, false));
        Schema = new TableSchema(columns);
    }

    public TableSchema Schema { get; }

    /// <summary>The row of a season.</summary>
    /// <param name="item">The item.</param>
    /// <param name="document">Its scenario.</param>
    /// <param name="calendar">Its calendar.</param>
    /// <param name="summary">What it gave.</param>
    public object?[] Row(PlanItem item, ScenarioDocument document, SeasonCalendar calendar, SeasonSummary summary)
    {
        var row = new object?[Schema.Columns.Count];
        var weather = _plan.Weather[item.Weather];
        Set("item", (double)item.Number);
        Set("scenario", _plan.Scenarios[item.Scenario].Label);
        Set("weather", WeatherLabel(weather, document));
        Set("year", (double)calendar.Year);
        Set("seed", (double)item.Seed);
        if (_hasWeatherSeed) Set(WeatherSeed, (double?)weather.Seed);
        for (var key = 0; key < item.Values.Count; key++)
            Set(_plan.Varied[key].Key, _plan.Varied[key].IsNumber ? item.Values[key].Number : item.Values[key].Text);
        Set(EndReason, summary.EndReason);
        // A class of age without a leaf gained nothing: zero, not unknown.
        if (summary.RipeningCarbonByLeafAge.Count > 0)
            for (var column = 0; column < row.Length; column++)
                if (Schema.Columns[column].Name.StartsWith(LeafAges, StringComparison.Ordinal)) row[column] = 0.0;
        foreach (var (name, cell) in Cells(summary))
        {
            // What is null for a whole part of the summary is null in each of its columns.
            if (cell.Length == 0) continue;
            if (Schema.Columns[ColumnOf(name)].IsNumber)
            {
                Set(name, double.Parse(cell, CultureInfo.InvariantCulture));
                continue;
            }

            Set(name, cell);
            if (name.StartsWith(Dates, StringComparison.Ordinal))
                Set(name + DayOfYear, (double)DayOf(DateOnly.ParseExact(cell, "yyyy-MM-dd", CultureInfo.InvariantCulture), calendar));
        }

        return row;

        void Set(string name, object? value) => row[ColumnOf(name)] = value;
    }

    /// <summary>Day of the spring's year, from 1; days of the next year go on after its last.</summary>
    public static int DayOf(DateOnly date, SeasonCalendar calendar) =>
        date.DayNumber - new DateOnly(calendar.Year, 1, 1).DayNumber + 1;

    private string WeatherLabel(PlanWeather weather, ScenarioDocument document)
    {
        var file = BatchWeather.LabelOf(weather, document, _plan);
        return weather.Seed is { } seed ? FormattableString.Invariant($"{file}, seed {seed}") : file;
    }

    private int ColumnOf(string name) => Schema.IndexOf(name) is var column and >= 0
        ? column
        : throw new InvalidOperationException($"the summary has {name}, for which the table has no column");

    private static IEnumerable<KeyValuePair<string, string>> Cells(SeasonSummary summary) =>
        FlatSummary.Of(SummaryJson.Text(summary, new InputHashes("", [], "")))
            .Where(cell => !LeftOut.Any(name => name.EndsWith('.')
                ? cell.Key.StartsWith(name, StringComparison.Ordinal)
                : cell.Key == name));

    private static IEnumerable<TableColumn> SummaryColumns(BatchPlan plan)
    {
        var sides = SidesOf(plan);
        var filled = new FilledRecord(new Dictionary<Type, object> { [typeof(FruitSide)] = sides[0] });
        var (light, heat) = (filled.Of<FruitSideLight>(), filled.Of<FruitSideHeat>());
        IReadOnlyList<LeafAgeShare> ages = [.. Enumerable.Range(0, OldestLeafDays / 10)
            .Select(number => new LeafAgeShare(10 * number, 10 * (number + 1), 0))];
        var whole = new FilledRecord(new Dictionary<Type, object>
        {
            [typeof(FruitSide)] = sides[0],
            [typeof(IReadOnlyList<FruitSideLight>)] = sides.Select(side => light with { Side = side }).ToList(),
            [typeof(IReadOnlyList<FruitSideHeat>)] = sides.Select(side => heat with { Side = side }).ToList(),
            [typeof(IReadOnlyList<LeafAgeShare>)] = ages,
            [typeof(IReadOnlyList<CanopyScoreItem>)] = ScoreItems.Select(item => new CanopyScoreItem(item, 1)).ToList(),
        });
        foreach (var (name, cell) in Cells(whole.Of<SeasonSummary>()))
        {
            var isNumber = double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
            yield return new TableColumn(name, isNumber);
            if (name.StartsWith(Dates, StringComparison.Ordinal)) yield return new TableColumn(name + DayOfYear, true);
        }
    }

    // Sides of walls that any season of the plan can have; all there are where trellis or row direction differ.
    private static IReadOnlyList<FruitSide> SidesOf(BatchPlan plan)
    {
        const int MostWalls = 2;
        var isTrellisVaried = plan.Varied.Any(key => key.Key.StartsWith("trellis.", StringComparison.Ordinal));
        var isAzimuthVaried = plan.Varied.Any(key => key.Key == "rows.azimuth");
        var sides = new List<FruitSide>();
        foreach (var document in plan.Scenarios.Select(scenario => scenario.Document))
        {
            var walls = isTrellisVaried ? MostWalls : TrellisLayout.WallsOf(document.Scenario.Trellis).Count;
            for (var wall = 0; wall < walls; wall++)
                foreach (var azimuth in isAzimuthVaried
                    ? [0, 45, 90, 135, 180, 225, 270, 315]
                    : (double[])[document.Scenario.Rows.Azimuth])
                    sides.AddRange([FruitSide.Of(wall, isRight: false, azimuth), FruitSide.Of(wall, isRight: true, azimuth)]);
        }

        return [.. sides.DistinctBy(side => (side.Wall, side.Facing)).OrderBy(side => side.Wall)];
    }
}
