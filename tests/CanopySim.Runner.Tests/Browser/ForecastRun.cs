using System.Text.Json;
using CanopySim.Files.Charts;
using CanopySim.Files.Forecast;
using CanopySim.Fitting;

namespace CanopySim.Runner.Tests.Browser;

/// <summary>
/// A small forecast of the notebook block, six vines up to 15 Brix, with its page and its numbers as the command writes them.
/// </summary>
public sealed class ForecastRun : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public ForecastRun()
    {
        var block = Path.Combine(RunnerProcess.Repository, "scenarios", "notebook");
        var input = ForecastInput.Read(
            Path.Combine(block, "scenario.yaml"), ["season.target_sugar=15 Brix"], Path.Combine(block, "notes.csv"), null, null);
        var weather = new WeatherAhead(
            input.Known, input.Record, input.Scenario, input.UtcOffsetHours, input.LastDay, input.Scenario.Seed);
        var forecast = VineForecast.Make(
            input.Scenario, input.Known, weather, input.UtcOffsetHours, input.AsOf, input.Noted.Observations,
            new ForecastOptions { Members = 6, MembersOfOption = 1, StandingQuality = Quality.Rough, Threads = 2 });
        var report = new ForecastReport(input, forecast);
        Content = ForecastContents.Of(report, Units.Metric, new DateOnly(2024, 5, 21));
        Page = _folder.Write(ForecastPage.FileName, ForecastPage.Html(Content, ForecastCharts.All(Content)));
        Json = JsonDocument.Parse(ForecastJson.Text(report)).RootElement;
    }

    public ForecastContent Content { get; }

    /// <summary>The file.</summary>
    public string Page { get; }

    /// <summary>What <c>forecast.json</c> holds.</summary>
    public JsonElement Json { get; }

    public void Dispose() => _folder.Dispose();
}
