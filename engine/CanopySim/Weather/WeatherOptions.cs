using CanopySim.Parameters;

namespace CanopySim.Weather;

/// <summary>Which weather file, and how it is read.</summary>
public sealed record WeatherOptions
{
    [KeyHelp("The weather file, beside the scenario: CSV by day or by hour, or EPW.")]
    public required string File { get; init; }

    [KeyHelp("For headers that are not recognised: quantity: header [unit]. Quantities: date, air_temperature, minimum_temperature, maximum_temperature, relative_humidity, dew_point, global_radiation, diffuse_radiation, direct_normal_radiation, rain, wind, pressure.")]
    public IReadOnlyDictionary<string, string> Columns { get; init; } = new Dictionary<string, string>();

    [KeyHelp("true: gaps are filled and counted; false: a gap is an error.")]
    public bool FillGaps { get; init; }

    [KeyHelp("Whether an hour's time names its start or its end.")]
    public HourStamp HourStamp { get; init; } = HourStamp.Start;

    [Parameter("degC-0.5", 0.08, 0.3, "Factor of radiation from the temperature range, where radiation is missing.", Mark = Mark.Published,
        Source = "Hargreaves & Samani as FAO-56 Eq. 50: 0.16 interior, 0.19 coast")]
    public double RadiationFromTemperature { get; init; } = 0.16;

    [KeyHelp("Seed of a season made like the file's record; left out: the record itself.")]
    public ulong? Seed { get; init; }

    [Parameter("K", -10, 10, "Added to every temperature of the year, measured or generated.", IsDifference = true, Mark = Mark.Given)]
    public double Warming { get; init; }

    [Parameter("K", -10, 10, "Added to those of winter besides: December to February, in the south June to August.", IsDifference = true, Mark = Mark.Given)]
    public double WinterWarming { get; init; }

    [Parameter("K", -10, 10, "Added to those of spring besides: March to May, in the south September to November.", IsDifference = true, Mark = Mark.Given)]
    public double SpringWarming { get; init; }

    [Parameter("K", -10, 10, "Added to those of summer besides: June to August, in the south December to February.", IsDifference = true, Mark = Mark.Given)]
    public double SummerWarming { get; init; }

    [Parameter("K", -10, 10, "Added to those of autumn besides: September to November, in the south March to May.", IsDifference = true, Mark = Mark.Given)]
    public double AutumnWarming { get; init; }

    [Parameter("1", 0, 5, "Factor of every day's rain; which days are wet stays.", Mark = Mark.Given)]
    public double RainFactor { get; init; } = 1;
}

/// <summary>Which end of an hour its time names.</summary>
public enum HourStamp
{
    Start,
    End,
}
