using System.ComponentModel;
using CanopySim.Files;
using CanopySim.Files.Moments;
using CanopySim.Files.Results;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Sky;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim light</c>: the canopy of a day in the light of a moment, with the scene for other programs.</summary>
public sealed class LightCommand : Command<LightCommand.Settings>
{
    public sealed class Settings : ComputeSettings
    {
        [CommandOption("--at <TIME>")]
        [Description("Local time of the site, or a time with an offset.")]
        public string At { get; init; } = "";
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var (quality, threads) = (settings.Quality, settings.ThreadCount);
        if (settings.At.Length == 0) throw new InputError(new InputPlace("--at"), "no time", "a time such as 2025-07-20T10:00");
        var input = SeasonInput.Read(settings.Scenario, settings.Overrides);
        var scenario = input.Document.Scenario;
        var utc = input.Time.Read(settings.At, new InputPlace("--at"));
        var local = utc.UtcDateTime.AddHours(input.UtcOffsetHours);
        var day = DateOnly.FromDateTime(local);
        var weather = input.Weather.Days.FirstOrDefault(candidate => candidate.Date == day)
            ?? throw new InputError(new InputPlace("--at"), $"{day:yyyy-MM-dd} is not in the weather", $"a day from {input.Weather.Days[0].Date:yyyy-MM-dd} to {input.Weather.Days[^1].Date:yyyy-MM-dd}");
        using var folder = ResultsFolder.Begin(settings.OutFolder(settings.Scenario) + (settings.Out is null ? "-light" : ""));
        Plants.Canopy canopy;
        using (var progress = new ProgressLine(settings.Quiet))
        {
            // The canopy is grown at draft: light of one moment is what is asked for in full detail.
            canopy = Simulation.CanopyOn(scenario, input.Weather, input.UtcOffsetHours, new SeasonOptions
            {
                Quality = Quality.Draft,
                Threads = threads,
                Progress = progress.Show,
                Cancellation = cancellationToken,
            }, day);
        }

        var sun = SolarPosition.At(utc, scenario.Site.Latitude, scenario.Site.Longitude, scenario.Site.Elevation);
        var scene = new CanopyScene(scenario).Place(canopy, SceneDetail.Drawn).Scene;
        var level = LightQuality.For(quality);
        var sky = new SkyFrame(scenario.Rows.Azimuth, level.SkyDirectionCount);
        var incident = sky.Of(weather.Hours[local.Hour], new HourlySun(sun, sun.IsUp ? 1 : 0));
        var geometry = LightGeometry.Build(scene, sky.Directions, level, threads);
        var solution = geometry.Solve(incident is null ? [] : [incident], scenario.Optics, threads);
        var lighted = LightMomentMaker.Make(utc, sun, scene, incident, solution, sky.CellFromSky(sun.ZenithRadians, sun.AzimuthRadians));
        LightFiles.WriteJson(folder.File(LightFiles.JsonName), lighted.Moment);
        LightFiles.WriteLeaves(folder.File(LightFiles.LeavesName), lighted.Leaves);
        SceneFile.Write(folder.File(SceneFile.FileName), scene);
        SummaryJson.WriteBrief(folder.File(SummaryJson.FileName), scenario.Name, "light", InputHashes.Of(input.Document));
        folder.Commit();
        if (!settings.Quiet) Tell(lighted, folder.Target);
        return RunnerApp.Ok;
    }

    private static void Tell(LightedScene lighted, string folder)
    {
        var moment = lighted.Moment;
        var incident = moment.Par.IncidentDirectWM2 + moment.Par.IncidentDiffuseWM2;
        Console.WriteLine(incident > 0
            ? $"The sun reaches {100 * moment.SunlitLeafAreaM2 / Math.Max(moment.LeafAreaM2, 1e-9):0} % of the leaf area; leaves absorb {100 * moment.Par.AbsorbedLeavesWM2 / incident:0} % of the PAR that falls on the block."
            : "The sun is down: no light.");
        Console.WriteLine($"light.json, leaves.csv and scene.ply are in {folder}.");
    }
}
