using System.Globalization;
using CanopySim.Files.Charts;
using CanopySim.Files.Report;
using CanopySim.Parameters;

namespace CanopySim.Files.Batch.Report;

/// <summary>What a batch's page is made from.</summary>
public sealed record BatchReport
{
    public required BatchPlan Plan { get; init; }

    public required PlanItems Items { get; init; }

    /// <summary>The merged tables.</summary>
    public required BatchQuery Query { get; init; }

    /// <summary>Items that could not be grown.</summary>
    public required IReadOnlyList<ItemFailure> Failures { get; init; }

    /// <summary>Shards that were not there to be merged.</summary>
    public required int MissingShards { get; init; }

    /// <summary>Hash of the plan.</summary>
    public required string PlanSha256 { get; init; }

    public required string EngineVersion { get; init; }

    public required string EngineBuild { get; init; }

    /// <summary>Time that cores spent on the seasons [s].</summary>
    public required double CoreSeconds { get; init; }

    /// <summary>On how many machines.</summary>
    public required int Machines { get; init; }
}

/// <summary>
/// The report of a batch: one HTML file like a season's. When the fruit is ripe and how sure, the bands behind it, what decides, what
/// failed, and what all rests on.
/// </summary>
public static class BatchPage
{
    // More scenarios have their rows in the tables, not their pictures.
    private const int MostPictured = 6;

    private const int MostFailures = 20;

    public static string Html(BatchReport report)
    {
        var html = new HtmlText();
        var foot = $"{report.Plan.Name}, {Count(report.Items.Count, "season")}";
        List<Ensemble> ensembles = [.. report.Plan.Scenarios.Select(scenario => new Ensemble(report.Query, scenario.Label))];
        PageParts.Head(html, $"{report.Plan.Name}: many seasons", foot);
        Answer(html, report, ensembles);
        foreach (var ensemble in ensembles.Take(MostPictured)) Courses(html, ensemble);
        Tables(html, ensembles);
        SensitivitySections.Write(html, report, ensembles);
        Failures(html, report);
        Basis(html, report);
        PageParts.Cautions(
            html,
            "The bands hold what the plan varies and nothing else: pests, diseases, what differs within a block, and errors of the model are not in them.",
            "Shares of the seasons are chances only where the plan draws weather and values as they come; a list of cases is no forecast.");
        html.Markup("</section>");
        return PageParts.End(html, foot);
    }

    private static void Answer(HtmlText html, BatchReport report, IReadOnlyList<Ensemble> ensembles)
    {
        html.Markup("<section>").Element("h1", Opening(report, ensembles[0]));
        if (ensembles.Count > 1) html.List(ensembles.Skip(1).Select(ensemble => Opening(report, ensemble)));
        var grown = ensembles.Sum(ensemble => ensemble.Seasons);
        var text = $"{Count(grown, "simulated season")}: what the model says, not what was measured.";
        if (report.Failures.Count > 0) text += $" {Count(report.Failures.Count, "more")} could not be grown, as said below.";
        if (report.MissingShards > 0)
            text += $" {Count(report.MissingShards, "part")} of the plan {(report.MissingShards == 1 ? "is" : "are")} missing: this page is of an unfinished batch.";
        html.Element("p", text, "quiet");
        PageParts.Figure(html, BatchCharts.Sugar(ensembles[0], Target(report, ensembles[0])).Picture());
        foreach (var ensemble in ensembles.Skip(1).Take(MostPictured - 1))
            PageParts.Figure(html, BatchCharts.Sugar(ensemble, Target(report, ensemble)).Picture());
        html.Markup("</section>");
    }

    // "High wire: 22 Brix on 14 September, between 6 September and 25 September in four of five; all of 500 seasons reach it."
    private static string Opening(BatchReport report, Ensemble ensemble)
    {
        var target = Target(report, ensemble) is { } sugar ? Measure.Brix(sugar) : "its own target sugar";
        if (ensemble.Of(Outcome.Ripeness) is not { } days)
            return $"{ensemble.Scenario}: none of {Count(ensemble.Seasons, "season")} reaches {target}.";
        var reached = days.Seasons == ensemble.Seasons ? "all" : days.Seasons.ToString(CultureInfo.InvariantCulture);
        var (early, late) = (Date(days.P10), Date(days.P90));
        var range = early == late ? "that day" : $"between {early} and {late}";
        return $"{ensemble.Scenario}: {target} on {Date(days.P50)}, {range} in four of five"
            + $"{(days.Seasons == ensemble.Seasons ? "" : " of those that reach it")}; "
            + $"{reached} of {Count(ensemble.Seasons, "season")} {(days.Seasons == 1 ? "reaches" : "reach")} it.";
    }

    private static void Courses(HtmlText html, Ensemble ensemble)
    {
        html.Markup("<section>").Element("h2", $"Ripening and leaves, {ensemble.Scenario}");
        PageParts.Figure(html, BatchCharts.Ripening(ensemble).Picture());
        PageParts.Figure(html, BatchCharts.Carbon(ensemble).Picture());
        html.Markup("</section>");
    }

    private static void Tables(HtmlText html, IReadOnlyList<Ensemble> ensembles)
    {
        html.Markup("<section>").Element("h2", "Dates")
            .Element("p", "Of the seasons that come so far; dates are those of a year without 29 February.", "quiet")
            .Table(
                "Dates", ["Stage", "Earliest tenth", "Median", "Latest tenth", "Seasons"],
                Rows(ensembles, Outcome.Stages, (_, value) => Date(value)), "numbers")
            .Element("h2", "Amounts")
            .Table(
                "Amounts", ["Quantity", "Lowest tenth", "Median", "Highest tenth", "Seasons"],
                Rows(ensembles, Outcome.Amounts, (outcome, value) => outcome.Text(value)), "numbers")
            .Markup("</section>");
    }

    private static IEnumerable<IReadOnlyList<string>> Rows(
        IReadOnlyList<Ensemble> ensembles, IReadOnlyList<Outcome> outcomes, Func<Outcome, double, string> text)
    {
        foreach (var outcome in outcomes)
        {
            foreach (var ensemble in ensembles)
            {
                var name = ensembles.Count > 1 ? $"{outcome.Name}\n{ensemble.Scenario}" : outcome.Name;
                var seasons = string.Create(CultureInfo.InvariantCulture, $"{ensemble.Of(outcome)?.Seasons ?? 0} of {ensemble.Seasons}");
                yield return ensemble.Of(outcome) is { } spread
                    ? [name, text(outcome, spread.P10), text(outcome, spread.P50), text(outcome, spread.P90), seasons]
                    : [name, "–", "–", "–", seasons];
            }
        }
    }

    private static void Failures(HtmlText html, BatchReport report)
    {
        html.Markup("<section>").Element("h2", "Seasons that could not be grown");
        if (report.Failures.Count == 0)
        {
            html.Element("p", "None failed.").Markup("</section>");
            return;
        }

        var byMessage = report.Failures.GroupBy(failure => failure.Message).OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal).ToList();
        html.Element("p", $"{report.Failures.Count} of {Count(report.Items.Count, "season")}; failures.csv beside this page names each.")
            .Table(
                "Seasons that could not be grown", ["Why", "Seasons", "First item"],
                byMessage.Take(MostFailures).Select(group => (IReadOnlyList<string>)
                [
                    group.Key, group.Count().ToString(CultureInfo.InvariantCulture), group.Min(failure => failure.Item).ToString(CultureInfo.InvariantCulture),
                ]),
                "numbers says");
        if (byMessage.Count > MostFailures) html.Element("p", $"And {byMessage.Count - MostFailures} more reasons.", "quiet");
        html.Markup("</section>");
    }

    private static void Basis(HtmlText html, BatchReport report)
    {
        var plan = report.Plan;
        html.Markup("<section>").Element("h2", "What was varied");
        if (plan.Varied.Count == 0) html.Element("p", "No value; only weather and seeds differ.");
        else html.Table("What was varied", ["Key", "How"], plan.Varied.Select(key => (IReadOnlyList<string>)[key.Key, key.Words]), "says");
        html.Element("h2", "Where this comes from").Table("Where this comes from", ["What", "Which"], Provenance(report), "says");
        html.Element("h2", "What the model assumes")
            .Element("p", "Values that are neither given nor varied, with how sure each is; where the scenarios differ, each says its own.");
        var varied = plan.Varied.Select(key => key.Key).ToHashSet(StringComparer.Ordinal);
        var rows = plan.Scenarios.SelectMany(scenario => scenario.Document.Values.Select(value => (scenario.Label, Value: value)))
            .Where(entry => entry.Value.Mark != Mark.Given && !varied.Contains(entry.Value.Key)).GroupBy(entry => entry.Value.Key)
            .SelectMany(key => key.Select(entry => entry.Value.Value).Distinct().Count() == 1 && key.Count() == plan.Scenarios.Count
                ? [(Name: key.Key, key.First().Value)]
                : key.Select(entry => (Name: $"{key.Key}, {entry.Label}", entry.Value)))
            .ToList();
        html.Markup("<div class=\"onscreen\">")
            .Table(
                "Values that the model used", ["Key", "Value", "How sure", "Source"],
                rows.Select(row => (IReadOnlyList<string>)[row.Name, row.Value.Value, MarkWords.Of(row.Value.Mark), row.Value.Source]), "values")
            .Markup("</div>")
            .Markup("<div class=\"onpaper\">")
            .Element("p", $"Printed here are those that are assumed or from memory; all {rows.Count} with their sources stand in the file of this page.", "quiet")
            .Markup("<ul class=\"brief\">");
        foreach (var row in rows.Where(row => row.Value.Mark is Mark.Assumed or Mark.Recalled))
            html.Element("li", $"{row.Name} {row.Value.Value} ({MarkWords.Of(row.Value.Mark)})");
        html.Markup("</ul>").Markup("</div>");
    }

    private static IEnumerable<IReadOnlyList<string>> Provenance(BatchReport report)
    {
        var plan = report.Plan;
        yield return ["Plan", $"{plan.Name} ({report.PlanSha256[..Math.Min(12, report.PlanSha256.Length)]})"];
        yield return ["Seasons of the plan", Whole(report.Items.Count)];
        yield return ["Weather of each scenario", Count(plan.Weather.Count, "season")];
        yield return ["Replicates", Whole(plan.Replicates)];
        yield return ["Seed", plan.Seed.ToString(CultureInfo.InvariantCulture)];
        if (plan.Design is { } design)
            yield return ["Design", $"{Scenarios.KeyNames.Choice(design.Kind).Replace('_', ' ')}, {Count(report.Items.Points.Count, "point")}"];
        yield return ["Quality of light", plan.Quality.ToString().ToLowerInvariant()];
        yield return ["Model", $"version {report.EngineVersion}, build {report.EngineBuild[..Math.Min(12, report.EngineBuild.Length)]}"];
        yield return ["Computed in", $"{Measure.Number(report.CoreSeconds / 3600, 2)} core hours on {Count(report.Machines, "machine")}"];
        yield return ["Parts missing", Whole(report.MissingShards)];
    }

    internal static string Date(double day)
    {
        var date = BatchCharts.DateOf(day);
        return ChartAxis.DayText(date, isShort: false);
    }

    // Null where the seasons of the plan have targets of their own.
    private static double? Target(BatchReport report, Ensemble ensemble) =>
        report.Plan.Varied.Any(key => key.Key == "season.target_sugar")
            ? null
            : report.Plan.Scenarios.First(scenario => scenario.Label == ensemble.Scenario).Document.Scenario.Season.TargetSugar;

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Count(int number, string what) => $"{Whole(number)} {what}{(number == 1 || what == "more" ? "" : "s")}";
}
