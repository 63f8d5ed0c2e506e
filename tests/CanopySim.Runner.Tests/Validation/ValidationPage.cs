using System.Collections.Concurrent;
using System.Text;
using CanopySim.Runner.Tests.Validation.Studies;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>Every study, judged, as a page of Markdown.</summary>
internal sealed class ValidationPage
{
    private readonly int _seasons;

    private ValidationPage(IReadOnlyList<(Study Study, StudyResult Result)> judged, int seasons) => (Judged, _seasons) = (judged, seasons);

    /// <summary>In the order of the page.</summary>
    public static IReadOnlyList<Study> AllStudies { get; } =
    [
        new PublishedCanopy(), new ShootNumber(), new NoStop(), new BloomNodes(), new CarbonAccount(), new TradeChecks(), new Heat(),
        new LeafAge(), new FruitSugar(), new TheQuestion(), new WaterUse(), new TrellisForms(), new ShootsAndLight(), new LeafAreaPerFruit(),
        new LateralsAtTheCut(), new LeafPulling(), new NextYearBuds(), new RowDirection(), new CropOrLeaves(), new LightReferences(),
    ];

    public IReadOnlyList<(Study Study, StudyResult Result)> Judged { get; }

    public IEnumerable<Finding> Findings => Judged.SelectMany(study => study.Result.Findings);

    /// <summary>Runs the seasons of some studies and judges them.</summary>
    public static ValidationPage Of(IReadOnlyList<Study> studies)
    {
        var seasons = new ValidationSeasons();
        seasons.RunAll(studies.SelectMany(study => study.Seasons));
        var results = new ConcurrentDictionary<Study, StudyResult>();
        Parallel.ForEach(studies, study => results[study] = study.Judge(seasons));
        return new ValidationPage([.. studies.Select(study => (study, results[study]))], seasons.Count);
    }

    public string Markdown()
    {
        var page = new StringBuilder();
        page.Append(
            $"""
            # Validation

            Published figures, their sources, and what the model says now. Made by `bash tests/validation.sh` from {_seasons} seasons at draft
            quality; a test makes it again and compares. A verdict follows from the limit beside it.

            What a figure can prove is its standing. *Fitted*: a parameter was turned until this figure was met. *Arithmetic*: follows from
            fitted or typed-in figures. *Watched*: not fitted, but looked at while the model was
            made, and choices followed it. *Predicted*: nothing was fitted to it. *Common practice*: predicted, but held against what the
            trade says, without a source. *Reported*: told, not judged. "From memory" marks figures recalled, not looked up.


            """);
        page.Append(Summary()).Append(Failures());
        for (var i = 0; i < Judged.Count; i++) Section(page, i + 1, Judged[i].Study, Judged[i].Result);
        return page.ToString().TrimEnd('\n') + "\n";
    }

    /// <summary>Those findings that failed, as a list; a sentence where there are none.</summary>
    public string Failures()
    {
        var failed = Judged.SelectMany(judged => judged.Result.Findings.Where(finding => finding.Verdict == Verdict.Failed)
            .Select(finding => $"- {judged.Study.Title}: {finding.Quantity}, {Words(finding.Standing)}\n")).ToList();
        return failed.Count == 0 ? "Nothing failed.\n\n" : $"Failed:\n\n{string.Concat(failed)}\n";
    }

    public static string Words(Standing standing) => standing switch
    {
        Standing.Fitted => "fitted",
        Standing.Arithmetic => "arithmetic",
        Standing.Watched => "watched",
        Standing.Predicted => "predicted",
        Standing.CommonPractice => "common practice",
        _ => "reported",
    };

    /// <summary>A table with its header.</summary>
    public static string Table(IReadOnlyList<string> header, IEnumerable<IReadOnlyList<string>> rows)
    {
        var table = new StringBuilder();
        table.Append(Row(header)).Append(Row([.. header.Select(_ => "---")]));
        foreach (var row in rows) table.Append(Row(row));
        return table.Append('\n').ToString();
    }

    private static string Row(IReadOnlyList<string> cells) => $"| {string.Join(" | ", cells)} |\n";

    private string Summary() => Table(
        ["study", "passed", "failed", "reported"],
        [.. Judged.Select(judged => CountRow(judged.Study.Title, judged.Result.Findings)), CountRow("all", Findings)]);

    private static string[] CountRow(string name, IEnumerable<Finding> findings)
    {
        var verdicts = findings.Select(finding => finding.Verdict).ToList();
        string Count(Verdict verdict) => $"{verdicts.Count(other => other == verdict)}";
        return [name, Count(Verdict.Passed), Count(Verdict.Failed), Count(Verdict.Reported)];
    }

    private static void Section(StringBuilder page, int number, Study study, StudyResult result)
    {
        page.Append($"## {number} {study.Title}\n\n{study.Done}\n\n");
        if (result.Findings.Count > 0)
        {
            page.Append(Table(
                ["quantity", "published", "ours", "difference", "limit", "standing", "verdict", "source", "note"],
                result.Findings.Select(finding => new[]
                {
                    finding.Quantity, finding.PublishedText, finding.OursText, finding.DifferenceText, finding.LimitText,
                    Words(finding.Standing), $"{finding.Verdict}".ToLowerInvariant(), finding.Source, finding.Note,
                })));
        }

        foreach (var table in result.Tables) page.Append($"{table.Caption}:\n\n").Append(Table(table.Header, table.Rows));
        foreach (var sentence in result.Sentences) page.Append($"{sentence}\n\n");
    }
}
