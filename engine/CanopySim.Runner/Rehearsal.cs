using CanopySim.Growth;
using CanopySim.Phenology;
using CanopySim.Results;
using CanopySim.Training;
using CanopySim.Weather;

namespace CanopySim.Runner;

/// <summary>
/// A short season of one invented shoot in invented heat, played on a second core while the first reads scenario and
/// weather, so that
/// the model is compiled when the real season begins: a draft season spends a sixth of its time in the compiler
/// otherwise. Nobody reads
/// what comes of it.
/// </summary>
public static class Rehearsal
{
    private const int Days = 60;

    private static readonly DateOnly FirstDay = new(2025, 5, 1);

    /// <summary>Begins on another thread, where the season may have one and the machine has a core for it.</summary>
    public static void Begin(int threads, Quality quality)
    {
        if (threads >= 2 && Environment.ProcessorCount >= 2) _ = Task.Run(() => Play(quality));
    }

    /// <summary>Plays it: the shoot breaks, blooms, turns, is topped and ripens within two months.</summary>
    public static SeasonResult Play(Quality quality)
    {
        var scenario = new Scenario
        {
            Name = "rehearsal",
            Site = new Site { Latitude = 40, Longitude = 0 },
            Weather = new WeatherOptions { File = "" },
            Season = new SeasonPlan { Budbreak = FirstDay, TargetSugar = 10 },
            Rows = new RowLayout { Spacing = 0.8, VineSpacing = 0.3 },
            CanopyWork = new CanopyWork
            {
                ShootsPerMeter = 3,
                Topping = [new Topping { WhenShootsReach = 0.6, Nodes = 8 }],
            },
            Cultivar = new Cultivar { BloomSum = 250, VeraisonSum = 400 },
            Growth = new GrowthParameters { LateralDelay = 50 },
        };
        var record = new WeatherRecord
        {
            FirstDay = FirstDay,
            Days = [.. Enumerable.Repeat(new DailyReading(22, 34, null, null, 0, 2), Days)],
        };
        var weather = WeatherBuilder.Complete(record, scenario.Weather, scenario.Site, utcOffsetHours: 0);
        return Simulation.Run(
            scenario, weather, utcOffsetHours: 0, new SeasonOptions { Quality = quality, Threads = 2 });
    }
}
