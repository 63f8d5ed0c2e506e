using System.ComponentModel;
using System.Globalization;
using CanopySim.Files;
using CanopySim.Files.Moments;
using CanopySim.Sky;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim sun</c>: solar positions as CSV.</summary>
public sealed class SunCommand : Command<SunCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandOption("--at <TIME>")]
        [Description("Universal time, or a time with an offset.")]
        public string? At { get; init; }

        [CommandOption("--times <FILE>")]
        [Description("A table with utc[[,latitude_deg,longitude_deg,elevation_m]].")]
        public string? Times { get; init; }

        [CommandOption("--latitude <DEGREES>")]
        [Description("North positive.")]
        public string? Latitude { get; init; }

        [CommandOption("--longitude <DEGREES>")]
        [Description("East positive.")]
        public string? Longitude { get; init; }

        [CommandOption("--elevation <METERS>")]
        [Description("Height above the sea; 0 by default.")]
        public string? Elevation { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        // All is read before the first line is printed: wrong input prints no half table.
        var times = Asked(settings);
        Console.WriteLine("utc,zenith_deg,azimuth_deg");
        foreach (var time in times)
        {
            var sun = SolarPosition.At(time.Utc, time.LatitudeDegrees, time.LongitudeDegrees, time.ElevationMeters);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                    $"{time.Utc:yyyy-MM-ddTHH:mm:ss.FFFFFFF}Z,{sun.ZenithDegrees:0.000000},{sun.AzimuthDegrees:0.000000}"));
        }

        return RunnerApp.Ok;
    }

    private static IReadOnlyList<SunTime> Asked(Settings settings)
    {
        var latitude = NumberOption.Read(settings.Latitude, "--latitude", -90, 90);
        var longitude = NumberOption.Read(settings.Longitude, "--longitude", -180, 180);
        var elevation = NumberOption.Read(settings.Elevation, "--elevation", -450, 9000);
        if ((settings.At is null) == (settings.Times is null))
            throw new InputError(
                new InputPlace("sun"), settings.At is null ? "neither --at nor --times" : "both --at and --times",
                "one of them");
        if (settings.Times is { } file) return SunTimes.Read(file, latitude, longitude, elevation);
        if (latitude is not { } north || longitude is not { } east)
            throw new InputError(new InputPlace("--at"), "no place", "--latitude and --longitude beside it");
        var utc = SunTimes.Utc(settings.At!, new InputPlace("--at"));
        return [new SunTime(settings.At!, utc, north, east, elevation ?? 0)];
    }
}
