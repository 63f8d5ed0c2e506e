using System.Globalization;
using CanopySim.Training;

namespace CanopySim.Files.Scenarios;

/// <summary>
/// Checks when steps of work are done: exactly one time each, within the season as far as the scenario alone tells it.
/// </summary>
internal sealed class WorkTimeChecks(Scenario scenario, Func<string, InputPlace> placeOf)
{
    public void Check(string list, IReadOnlyList<WorkStep> steps, bool needsShoots)
    {
        for (var i = 0; i < steps.Count; i++)
        {
            var key = string.Create(CultureInfo.InvariantCulture, $"{list}.{i}");
            HasOneTime(steps[i], key);
            if (steps[i].On is DateOnly day) IsInSeason(day, key + ".on", needsShoots);
            if (steps[i].Stage == WorkStage.Ripe && scenario.Season.Harvest == HarvestRule.TargetSugar)
                Fail(key + ".stage", "ripe, with season.harvest: target_sugar, which ends the season on that day",
                    "an earlier time, or another harvest");
        }
    }

    private void HasOneTime(WorkStep step, string key)
    {
        (string Name, bool IsGiven)[] times =
            [("on", step.On is not null), ("stage", step.Stage is not null),
                ("when_shoots_reach", step.WhenShootsReach is not null)];
        var given = times.Where(time => time.IsGiven).Select(time => time.Name).ToList();
        if (given.Count != 1)
            Fail(key,
                given.Count == 0 ? "neither on, stage nor when_shoots_reach" : $"both {string.Join(" and ", given)}",
                    "exactly one of them");
        if (step.DaysAfter is not null && step.Stage is null) Fail(
            key + ".days_after", "days after no stage", "days_after with stage");
    }

    private void IsInSeason(DateOnly day, string key, bool needsShoots)
    {
        var season = scenario.Season;
        if (needsShoots && season.Budbreak is DateOnly budbreak && day <= budbreak)
            Fail(key, $"{Text(day)}, with budbreak on {Text(budbreak)}", "a day after budbreak");
        if (season.Harvest == HarvestRule.Date && season.HarvestDate is DateOnly harvest && day > harvest)
            Fail(key, $"{Text(day)}, with harvest on {Text(harvest)}", "a day up to the harvest");
        if ((season.Year ?? season.Budbreak?.Year) is not int year) return;
        var calendar = SeasonCalendar.InYear(scenario.Site, year);
        if (day < calendar.HeatFrom || day > calendar.LastDay)
            Fail(key, $"{Text(day)}, outside the season {Text(calendar.HeatFrom)} to {Text(calendar.LastDay)}",
                "a day within it");
    }

    private void Fail(string key, string found, string expected) =>
        throw new InputError(placeOf(key), found, expected, key);

    private static string Text(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
