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
}

/// <summary>Which end of an hour its time names.</summary>
public enum HourStamp
{
    Start,
    End,
}
