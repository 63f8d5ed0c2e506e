using CanopySim.Numerics;

namespace CanopySim.Assessment;

/// <summary>A side of a wall on which clusters hang; of a roof, the half of it to that side of the row.</summary>
/// <param name="Wall">Number of the wall, from 0.</param>
/// <param name="IsRight">True for the right, 90° clockwise from the row azimuth.</param>
/// <param name="Bearing">Where it looks, clockwise from north [deg, 0 to 360].</param>
public readonly record struct FruitSide(int Wall, bool IsRight, double Bearing)
{
    private static readonly string[] Winds =
        ["north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest"];

    // Sides within this of north or south are neither the morning's nor the afternoon's [deg]: half a wind.
    private const double NeitherWithin = 22.5;

    public static FruitSide Of(int wall, bool isRight, double rowAzimuth)
    {
        var bearing = (rowAzimuth + (isRight ? 90 : 270)) % 360;
        return new FruitSide(wall, isRight, bearing);
    }

    /// <summary>right or left of the wall, looking along the row azimuth.</summary>
    public string Name => IsRight ? "right" : "left";

    /// <summary>The nearest of eight winds.</summary>
    public string Facing => Winds[(int)Math.Round(Bearing / 45) % 8];

    /// <summary>morning, afternoon, or neither where it looks north or south.</summary>
    public string PartOfDay => Math.Sin(UnitConversion.RadiansFromDegrees(Bearing)) switch
    {
        var east when east > LeastEast => "morning",
        var east when east < -LeastEast => "afternoon",
        _ => "neither",
    };

    private static double LeastEast { get; } = Math.Sin(UnitConversion.RadiansFromDegrees(NeitherWithin));
}
