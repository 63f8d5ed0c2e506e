using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.Training;

namespace CanopySim.Assessment;

/// <summary>A rod of the point quadrat.</summary>
/// <param name="Origin">Where it begins [m].</param>
/// <param name="Direction">Unit vector along it.</param>
/// <param name="Length">How far it is pushed [m]; infinite where nothing but the row's own foliage lies ahead.</param>
/// <param name="Place">Share of the way up the fruit zone, or across a roof [0 to 1].</param>
internal readonly record struct QuadratRod(Vector3 Origin, Vector3 Direction, float Length, double Place)
{
    // Walls nearer than this across the row stand above each other, and no rod through one meets the other [m].
    private const double AboveEachOther = 0.05;

    /// <summary>
    /// A rod at a seeded place of a wall's fruit zone: square to the wall, from half way to its neighbor on the left to half way to that
    /// on the right; under a flat wall upright from the ground, where no other flat wall of the row is nearer.
    /// </summary>
    public static QuadratRod At(Cell cell, IReadOnlyList<FoliageWall> walls, int number, ulong seed, int insertion)
    {
        var wall = walls[number];
        var along = (float)(cell.Along * SeededValue.Uniform(seed, "quadrat along", insertion, number));
        var second = SeededValue.Uniform(seed, "quadrat across", insertion, number);
        var ground = (float)cell.RiseAlong * along;
        var (from, to) = Between(walls.Where(other => other != wall && other.IsFlat == wall.IsFlat), wall, second);
        if (wall.IsFlat)
        {
            var (left, right) = (Math.Max(from, -0.5 * cell.Across), Math.Min(to, 0.5 * cell.Across));
            var across = (float)((0.5 * (left + right)) + ((right - left) * (second - 0.5)));
            return new QuadratRod(new Vector3(across, along, ground + ((float)cell.RiseAcross * across)), Vector3.UnitZ, float.PositiveInfinity, second);
        }

        var zone = wall.FruitZone;
        var direction = Square(wall);
        var start = Math.Max(from, -0.5 * cell.Across);
        var up = direction.Z / direction.X * (start - zone.Across(second));
        var origin = new Vector3((float)start, along, ground + (float)(zone.Height(second) + up));
        return new QuadratRod(origin, direction, double.IsInfinity(to) ? float.PositiveInfinity : (float)((to - start) / direction.X), second);
    }

    // Across the wall, to the right. A wall that stands or hangs upright has no slant at all, not a rounding's.
    private static Vector3 Square(FoliageWall wall)
    {
        var (sin, cos) = Math.SinCos(wall.Tilt);
        if (Math.Abs(sin) < 1e-9) return Vector3.UnitX;
        var side = Math.Sign(cos);
        return new Vector3((float)(side * cos), 0, (float)(-side * sin));
    }

    // Half ways to the nearest walls of the row on the left and on the right [m across the row].
    private static (double From, double To) Between(IEnumerable<FoliageWall> others, FoliageWall wall, double share)
    {
        var (here, from, to) = (wall.FruitZone.Across(share), double.NegativeInfinity, double.PositiveInfinity);
        foreach (var other in others)
        {
            var there = other.FruitZone.Across(share);
            if (there < here - AboveEachOther) from = Math.Max(from, 0.5 * (here + there));
            else if (there > here + AboveEachOther) to = Math.Min(to, 0.5 * (here + there));
        }

        return (from, to);
    }
}
