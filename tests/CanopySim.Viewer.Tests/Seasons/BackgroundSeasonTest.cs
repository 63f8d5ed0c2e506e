using System.Diagnostics;
using CanopySim.Files;
using CanopySim.Files.Results;
using CanopySim.Viewer.Seasons;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Tests.Seasons;

public sealed class BackgroundSeasonTest
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    [Fact]
    public void Days_come_while_it_runs_and_it_stops_between_two()
    {
        var season = Begin();
        Until(() => season.Recording.DayCount >= 5);
        Assert.False(season.Recording.IsFinished);
        Assert.Null(season.Recording.Outcome());
        var early = season.Recording.Row(4);
        Until(() => season.Recording.DayCount >= 8);
        Assert.Equal(early, season.Recording.Row(4));
        season.Dispose();
        Assert.False(season.Recording.IsFinished);
        Assert.Null(season.Failure);
    }

    [Fact]
    public void A_trial_is_grown_with_the_weather_of_the_season_that_is_shown()
    {
        using var shown = RecordedBlock.Open();
        using var trials = new TrialRunner(shown, Path.GetTempPath(), Environment.ProcessorCount);
        Assert.Equal(TrialStage.Idle, trials.Status.Stage);
        trials.Start(shown.Scenario);
        Assert.Equal(TrialStage.Running, trials.Status.Stage);
        Until(() => trials.Status.Stage == TrialStage.Done);
        var grown = trials.Status;

        // The season that is shown ends in June; nothing was changed, so until then both are the same.
        Assert.Equal(Enumerable.Range(0, shown.DayCount).Select(shown.Row), grown.Result!.Days.Take(shown.DayCount));
        Assert.True(grown.Recording!.DayCount > shown.DayCount);
        trials.Stop();
        Assert.Equal(TrialStage.Idle, trials.Status.Stage);
    }

    [Fact]
    public void Scenarios_are_saved_by_new_names_only()
    {
        var folder = Directory.CreateTempSubdirectory("canopysim-test-");
        using var shown = RecordedBlock.Open();
        using var trials = new TrialRunner(shown, folder.FullName, 1);
        Assert.StartsWith("Saved as", trials.Save("name: tried", "tried.yaml"));
        Assert.Equal("name: tried", File.ReadAllText(Path.Combine(folder.FullName, "tried.yaml")));
        Assert.Contains("there already", trials.Save("name: other", "tried.yaml"));
        Assert.Contains("no name of a file", trials.Save("name: other", "../tried.yaml"));
        Assert.Equal("name: tried", File.ReadAllText(Path.Combine(folder.FullName, "tried.yaml")));
        folder.Delete(recursive: true);
    }

    private static BackgroundSeason Begin()
    {
        var input = SeasonInput.Read(RecordedBlock.ScenarioFile, []);
        return new BackgroundSeason(
            input.Document.Scenario, input.Weather, input.UtcOffsetHours, Quality.Standard, 1, InputHashes.Of(input.Document));
    }

    private static void Until(Func<bool> happens)
    {
        var watch = Stopwatch.StartNew();
        while (!happens())
        {
            Assert.True(watch.Elapsed < Patience, "it did not happen");
            Thread.Sleep(10);
        }
    }
}
