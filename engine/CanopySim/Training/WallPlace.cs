using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;

namespace CanopySim.Training;

/// <summary>Where a point is, seen from a wall of foliage.</summary>
/// <param name="Distance">How far it is from the wall's middle plane, square to it [m].</param>
/// <param name="HeightOverCordon">Height over the ground there, less the cordon's [m].</param>
/// <param name="IsRight">True on the right of the wall, looking along the row; of a roof, right of the cordon.</param>
internal readonly record struct WallPlace(double Distance, double HeightOverCordon, bool IsRight)
{
    /// <param name="wall">The wall.</param>
    /// <param name="row">Where the middle of its row runs across the cell [m].</param>
    /// <param name="point">The point in the cell [m].</param>
    /// <param name="places">Where the ground is.</param>
    public static WallPlace Of(FoliageWall wall, double row, Vector3 point, CanopyPlaces places)
    {
        var up = places.HeightOverGround(point) - wall.CordonHeight;
        var across = point.X - row - wall.CordonAcross;
        var (sin, cos) = Math.SinCos(wall.Tilt);
        // The wall's middle plane leans from its cordon, whatever the ground does beside it.
        var square = (across * cos) - ((up + (places.Cell.RiseAcross * across)) * sin);
        return new WallPlace(Math.Abs(square), up, wall.IsFlat ? across > 0 : square * cos > 0);
    }
}

/// <summary>Which side of a row faces the morning.</summary>
public static class RowSides
{
    // Rows that run closer to east and west than this have no morning side [deg]. Assumed.
    private const double NearEastWestDegrees = 15;

    /// <summary>
    /// True where the right side, looking along the row, faces east; null where the row runs within 15° of east and
    /// west, so that its sides face north and south.
    /// </summary>
    /// <param name="rowAzimuth">Direction of the row, clockwise from north [deg].</param>
    public static bool? IsRightInTheMorning(double rowAzimuth)
    {
        // The right side faces 90° clockwise from the row; the east in that is the cosine of the row's azimuth.
        var east = Math.Cos(UnitConversion.RadiansFromDegrees(rowAzimuth));
        return Math.Abs(east) < Math.Sin(UnitConversion.RadiansFromDegrees(NearEastWestDegrees)) ? null : east > 0;
    }

    /// <summary>Whether a place on the right or left is on a side of the canopy.</summary>
    internal static bool IsOn(CanopySide side, bool isRight, double rowAzimuth) => side switch
    {
        CanopySide.Right => isRight,
        CanopySide.Left => !isRight,
        CanopySide.Morning => isRight == IsRightInTheMorning(rowAzimuth),
        CanopySide.Afternoon => isRight != (IsRightInTheMorning(rowAzimuth) ?? isRight),
        _ => true,
    };
}
