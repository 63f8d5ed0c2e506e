using CanopySim.Parameters;

namespace CanopySim;

/// <summary>Where the block lies.</summary>
public sealed record Site
{
    [Parameter("deg", -66, 66, "Latitude, north positive.", Mark = Mark.Given)]
    public required double Latitude { get; init; }

    [Parameter("deg", -180, 180, "Longitude, east positive.", Mark = Mark.Given)]
    public required double Longitude { get; init; }

    [Parameter("m", -450, 4500, "Height above the sea.", Mark = Mark.Given)]
    public double Elevation { get; init; }

    [KeyHelp("Time zone of the site: a name such as America/Los_Angeles, or an offset such as UTC-08:00.")]
    public string TimeZone { get; init; } = "UTC+00:00";

    [Parameter("deg", 0, 40, "Steepness of the block.", Mark = Mark.Given)]
    public double Slope { get; init; }

    [Parameter("deg", 0, 360, "Direction that the slope faces, downhill, clockwise from north.", Mark = Mark.Given)]
    public double Aspect { get; init; } = 180;

    [Parameter("umol mol-1", 200, 1200, "CO2 of the air.", Mark = Mark.Recalled,
        Source = "about the global mean of 2023")]
    public double Co2 { get; init; } = 420;

    [Parameter("m", 1, 20, "Height at which the weather's wind was measured.", Mark = Mark.Recalled,
        Source = "standard height of weather stations: FAO-56, chapter 3")]
    public double WindHeight { get; init; } = 10;

    /// <summary>True south of the equator, where the season crosses the new year.</summary>
    public bool IsSouthern => Latitude < 0;
}
