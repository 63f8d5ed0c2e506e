using CanopySim.Files.Scenarios;

namespace CanopySim.Runner.Commands;

/// <summary>A scenario's values as the report lists them.</summary>
public static class ReportValues
{
    public static IReadOnlyList<Files.Report.UnderstoodValue> Of(ScenarioDocument document) =>
        [.. document.Values.Select(value => new Files.Report.UnderstoodValue(value.Key, value.Value, value.Mark, value.Source))];
}
