using CanopySim.Files.Charts;
using CanopySim.Files.Report;

namespace CanopySim.Files.Comparison;

/// <summary>
/// Tables with a column an option: the grower's figures with what differs, and the tables of the season's report side
/// by side.
/// </summary>
internal sealed class ComparisonTables(IReadOnlyList<ComparedOption> options, Units units)
{
    private const string None = "–";

    /// <summary>Heads of all tables.</summary>
    public IReadOnlyList<string> Heads { get; } = ["Measure", .. options.Select(option => option.Name)];

    /// <summary>Ripe date and the grower's figures; below each what it differs by from the first option.</summary>
    public IEnumerable<IReadOnlyList<string>> Figures()
    {
        yield return ["Ripe", .. options.Select(RipeText)];
        foreach (var figure in GrowerFigure.All)
        {
            yield return
            [
                figure.Name,
                .. options.Select(option => figure.Text(option.Summary, units)
                    + (option == options[0]
                        ? ""
                        : Below(figure.Difference(option.Summary, options[0].Summary, units)))),
            ];
        }
    }

    public IEnumerable<IReadOnlyList<string>> Stages() => Beside(tables => tables.Stages());

    public IEnumerable<IReadOnlyList<string>> Canopy() =>
        Beside((tables, option) => option.Summary.Canopy is { } canopy ? tables.Canopy(canopy) : []);

    public IEnumerable<IReadOnlyList<string>> Harvest() =>
        Beside((tables, option) => option.Summary.Harvest is { } harvest ? tables.Harvest(harvest) : []);

    public IEnumerable<IReadOnlyList<string>> Totals() => Beside(tables => tables.Totals());

    public IEnumerable<IReadOnlyList<string>> FeedingLeaves() => Beside(tables => tables.FeedingLeaves());

    public IEnumerable<IReadOnlyList<string>> Checks() => Beside(tables => tables.Checks());

    /// <summary>
    /// A table of the season's report for each option, row by row beside each other; a row that one lacks is a dash.
    /// </summary>
    public IEnumerable<IReadOnlyList<string>> Beside(
        Func<SeasonTables, ComparedOption, IEnumerable<IReadOnlyList<string>>> rows)
    {
        var tables = options
            .Select(option => rows(new SeasonTables(option.Season, option.Scenario, units), option)
                .ToDictionary(row => row[0], row => row[1]))
            .ToList();
        return tables.SelectMany(table => table.Keys).Distinct()
            .Select(name => (IReadOnlyList<string>)[name,
                .. tables.Select(table => table.GetValueOrDefault(name, None))]);
    }

    private IEnumerable<IReadOnlyList<string>> Beside(Func<SeasonTables, IEnumerable<IReadOnlyList<string>>> rows) =>
        Beside((tables, _) => rows(tables));

    private string RipeText(ComparedOption option)
    {
        if (option.Summary.Dates.TargetSugar is not { } ripe) return "not reached";
        var isOneYear = options.Select(each => each.FirstYear).Distinct().Count() == 1;
        var text = isOneYear ? ChartAxis.DayText(ripe, isShort: false) : SeasonSentences.Date(ripe);
        return option == options[0] ? text : text + Below(ComparisonSentences.DaysApart(option, options[0]) ?? None);
    }

    private static string Below(string difference) => difference == None ? "" : $"\n{difference}";
}
