using System.ComponentModel;
using CanopySim.Assessment;
using CanopySim.Files;
using CanopySim.Files.Moments;
using CanopySim.Files.Results;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Sky;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary>
/// <c>canopysim light</c>: the canopy of a day in the light of a moment, with the scene for other programs.
/// </summary>
public sealed class LightCommand : Command<LightCommand.Settings>
{
    public sealed class Settings : OneScenarioSettings
    {
        [CommandOption("--at <TIME>")]
        [Description("Local time of the site, or a time with an offset.")]
        public string At { get; init; } = "";

        [CommandOption("--sensors <FILE>")]
        [Description("A table of light sensors: sensor,x_m,y_m,z_m,facing in the frame of scene.ply; facing is up, "
            + "down, north, east, south, west, right or left of the row, a vector in facing_x,facing_y,facing_z, or "
            + "empty for a small sphere. Their light is written to sensors.csv.")]
        public string? Sensors { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var (quality, threads) = (settings.Quality, settings.ThreadCount);
        if (settings.At.Length == 0) throw new InputError(
            new InputPlace("--at"), "no time", "a time such as 2025-07-20T10:00");
        var input = SeasonInput.Read(settings.Scenario, settings.Overrides);
        var scenario = input.Document.Scenario;
        var utc = input.Time.Read(settings.At, new InputPlace("--at"));
        var local = utc.UtcDateTime.AddHours(input.UtcOffsetHours);
        var day = DateOnly.FromDateTime(local);
        var weather = input.Weather.Days.FirstOrDefault(candidate => candidate.Date == day)
            ?? throw new InputError(
                new InputPlace("--at"), $"{day:yyyy-MM-dd} is not in the weather",
                $"a day from {input.Weather.Days[0].Date:yyyy-MM-dd} to {input.Weather.Days[^1].Date:yyyy-MM-dd}");
        var target = settings.OutFolder(settings.Scenario) + (settings.Out is null ? "-light" : "");
        CheckOutside(settings.Sensors, target);
        var sensors = settings.Sensors is { } file
            ? SensorTable.Read(file, CanopyScene.CellOf(scenario), scenario.Rows.Azimuth) : [];
        using var folder = ResultsFolder.Begin(target);
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
        var (solution, radiosity) =
            geometry.SolveWithRadiosity(incident is null ? [] : [incident], scenario.Optics, threads);
        var fruitZone = FruitZoneLight.Read(scenario, solution, radiosity, threads).FirstOrDefault();
        var lighted =
            LightMomentMaker.Make(
            utc, sun, scene, incident, solution, sky.CellFromSky(sun.ZenithRadians, sun.AzimuthRadians), fruitZone);
        LightFiles.WriteJson(folder.File(LightFiles.JsonName), lighted.Moment);
        LightFiles.WriteLeaves(folder.File(LightFiles.LeavesName), lighted.Leaves);
        if (sensors.Count > 0)
        {
            var readings = incident is null
                ? new SensorReading[sensors.Count]
                : LightSensors.Place(geometry, [.. sensors.Select(sensor => sensor.Sensor)], threads)
                    .Read(radiosity, threads)[0];
            var above = incident is null ? 0 : LightMomentMaker.ParAbove(incident);
            SensorFiles.Write(
                folder.File(SensorFiles.FileName),
                sensors.Zip(readings, (sensor, reading) => new SensorRow(sensor, reading, above)));
        }

        SceneFile.Write(folder.File(SceneFile.FileName), scene);
        SummaryJson.WriteBrief(
            folder.File(SummaryJson.FileName), scenario.Name, "light", InputHashes.Of(input.Document));
        folder.Commit();
        if (!settings.Quiet) Tell(lighted, sensors.Count, folder.Target);
        return RunnerApp.Ok;
    }

    private static void Tell(LightedScene lighted, int sensors, string folder)
    {
        var moment = lighted.Moment;
        var incident = moment.Par.IncidentDirectWM2 + moment.Par.IncidentDiffuseWM2;
        Console.WriteLine(incident > 0
            ? $"The sun reaches {100 * moment.SunlitLeafAreaM2 / Math.Max(moment.LeafAreaM2, 1e-9):0} % of the leaf "
                + $"area; leaves absorb {100 * moment.Par.AbsorbedLeavesWM2 / incident:0} % of the PAR that falls on "
                + "the block."
            : "The sun is down: no light.");
        if (moment.FruitZone is { } zone)
        {
            Console.WriteLine(
                $"In the fruit zone a light bar that looks up reads {100 * zone.UpUmolM2S / zone.ParAboveUmolM2S:0} % "
                    + "of the PAR above the canopy.");
        }

        Console.WriteLine($"light.json, leaves.csv{(sensors > 0 ? ", sensors.csv" : "")} and scene.ply are in "
            + $"{folder}.");
    }

    // The folder is replaced whole, and with it a table that lies there under the name of the readings.
    private static void CheckOutside(string? sensors, string folder)
    {
        if (sensors is null
            || !string.Equals(
            Path.GetDirectoryName(Path.GetFullPath(sensors)),
            Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)), StringComparison.Ordinal)) return;
        throw new InputError(
            new InputPlace("--sensors"), $"{sensors} lies in the results folder, which is replaced",
            "a file elsewhere, or another --out");
    }
}
