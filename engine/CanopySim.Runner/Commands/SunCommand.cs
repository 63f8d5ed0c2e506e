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
        public double? Latitude { get; init; }

        [CommandOption("--longitude <DEGREES>")]
        [Description("East positive.")]
        public double? Longitude { get; init; }

        [CommandOption("--elevation <METERS>")]
        [Description("Height above the sea; 0 by default.")]
        public double? Elevation { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        InRange("--latitude", settings.Latitude, 90);
        InRange("--longitude", settings.Longitude, 180);
        InRange("--elevation", settings.Elevation, 9000);
        Console.WriteLine("utc,zenith_deg,azimuth_deg");
        foreach (var time in Asked(settings))
        {
            var sun = SolarPosition.At(time.Utc, time.LatitudeDegrees, time.LongitudeDegrees, time.ElevationMeters);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{time.Utc:yyyy-MM-ddTHH:mm:ss.FFFFFFF}Z,{sun.ZenithDegrees:0.000000},{sun.AzimuthDegrees:0.000000}"));
        }

        return RunnerApp.Ok;
    }

    private static IReadOnlyList<SunTime> Asked(Settings settings)
    {
        if ((settings.At is null) == (settings.Times is null))
            throw new InputError(new InputPlace("sun"), settings.At is null ? "neither --at nor --times" : "both --at and --times", "one of them");
        if (settings.Times is { } file) return SunTimes.Read(file, settings.Latitude, settings.Longitude, settings.Elevation);
        if (settings.Latitude is not { } latitude || settings.Longitude is not { } longitude)
            throw new InputError(new InputPlace("--at"), "no place", "--latitude and --longitude beside it");
        var utc = SunTimes.Utc(settings.At!, new InputPlace("--at"));
        return [new SunTime(settings.At!, utc, latitude, longitude, settings.Elevation ?? 0)];
    }

    private static void InRange(string option, double? value, double limit)
    {
        if (value is { } number && !(Math.Abs(number) <= limit))
            throw new InputError(new InputPlace(option), number.ToString(CultureInfo.InvariantCulture), $"a number from {-limit} to {limit}");
    }
}
