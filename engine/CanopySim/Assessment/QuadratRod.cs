using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.Training;

namespace CanopySim.Assessment;

/// <summary>A rod of the point quadrat.</summary>
/// <param name="Origin">Where it begins [m].</param>
/// <param name="Direction">Unit vector along it.</param>
/// <param name="Length">How far it is pushed [m]; infinite where it goes up into the sky.</param>
/// <param name="Place">Share of the way up the fruit zone, or across a roof [0 to 1].</param>
internal readonly record struct QuadratRod(Vector3 Origin, Vector3 Direction, float Length, double Place)
{
    /// <summary>
    /// A rod at a seeded place of a wall's fruit zone: square to the wall, from half way to its neighbor on the left to
    /// half way to that on the right, a wall of its row or the middle of an alley; under a flat wall upright from the
    /// ground, somewhere under its own roof.
    /// </summary>
    /// <param name="cell">The cell.</param>
    /// <param name="row">The wall's row.</param>
    /// <param name="number">The wall's number in its row.</param>
    /// <param name="rowSpacing">From a row to the next [m, horizontal].</param>
    /// <param name="seed">Decides where the rod goes.</param>
    /// <param name="insertion">Number of the rod on this wall.</param>
    public static QuadratRod At(in Cell cell, RowOfWalls row, int number, double rowSpacing, ulong seed, int insertion)
    {
        var wall = row.Walls[number];
        var address = (row.Number * row.Walls.Count) + number;
        var along = (float)(cell.Along * SeededValue.Uniform(seed, "quadrat along", insertion, address));
        var second = SeededValue.Uniform(seed, "quadrat across", insertion, address);
        var ground = (float)cell.RiseAlong * along;
        var (from, to) = Between(row.Walls, wall, second);
        if (wall.IsFlat)
        {
            var (left, right) = RoofOf(wall, rowSpacing);
            (left, right) = (Math.Max(from, left), Math.Min(to, right));
            var across = (float)(row.Across + (0.5 * (left + right)) + ((right - left) * (second - 0.5)));
            var under = new Vector3(across, along, ground + ((float)cell.RiseAcross * across));
            return new QuadratRod(under, Vector3.UnitZ, float.PositiveInfinity, second);
        }

        var zone = wall.FruitZone;
        var direction = Square(wall);
        var (start, end) = (Math.Max(from, -0.5 * rowSpacing), Math.Min(to, 0.5 * rowSpacing));
        var up = direction.Z / direction.X * (start - zone.Across(second));
        // Heights of a wall count from the ground under its cordon.
        var cordonGround = (float)(cell.RiseAcross * (row.Across + wall.CordonAcross));
        var origin =
            new Vector3((float)(row.Across + start), along, ground + (float)(zone.Height(second) + up) + cordonGround);
        return new QuadratRod(origin, direction, (float)((end - start) / direction.X), second);
    }

    // What a roof covers, from its row's middle [m]: what its wires do, and never more than there is from a row to the
    // next.
    private static (double Left, double Right) RoofOf(FoliageWall wall, double rowSpacing)
    {
        var width = Math.Min(wall.Width, rowSpacing);
        return wall.OnlySide switch
        {
            > 0 => (wall.CordonAcross, wall.CordonAcross + width),
            < 0 => (wall.CordonAcross - width, wall.CordonAcross),
            _ => (wall.CordonAcross - (0.5 * width), wall.CordonAcross + (0.5 * width)),
        };
    }

    // Across the wall, to the right. A wall that stands or hangs upright has no slant at all, not a rounding's.
    private static Vector3 Square(FoliageWall wall)
    {
        var (sin, cos) = Math.SinCos(wall.Tilt);
        if (Math.Abs(sin) < 1e-9) return Vector3.UnitX;
        var side = Math.Sign(cos);
        return new Vector3((float)(side * cos), 0, (float)(-side * sin));
    }

    // Half ways to the nearest walls of the row on the left and on the right [m from the row's middle]; walls above
    // each other meet no rod of each other's.
    private static (double From, double To) Between(IReadOnlyList<FoliageWall> walls, FoliageWall wall, double share)
    {
        var (here, from, to) = (wall.FruitZone.Across(share), double.NegativeInfinity, double.PositiveInfinity);
        foreach (var other in walls)
        {
            if (other == wall || other.IsFlat != wall.IsFlat) continue;
            var middle = 0.5 * (here + other.FruitZone.Across(share));
            switch (SideOf(other, wall))
            {
                case < 0: from = Math.Max(from, middle); break;
                case > 0: to = Math.Min(to, middle); break;
            }
        }

        return (from, to);
    }

    // −1 where the other wall stands to the left, 1 to the right; two on one cordon part by the way they lean, 0 where
    // they lean alike.
    private static int SideOf(FoliageWall other, FoliageWall wall)
    {
        var apart = other.CordonAcross - wall.CordonAcross;
        if (Math.Abs(apart) < 1e-9) apart = Math.Sin(other.Tilt) - Math.Sin(wall.Tilt);
        return Math.Abs(apart) < 1e-9 ? 0 : Math.Sign(apart);
    }
}
