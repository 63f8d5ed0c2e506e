using System.Numerics;
using System.Runtime.CompilerServices;
using CanopySim.Geometry;

namespace CanopySim.RayTracing;

/// <summary>
/// Rays through the endless field of copies of one cell, in single precision and fast: what <see cref="PeriodicRayTracer"/> answers in
/// double. In every cell the ray starts anew where it enters, so that coordinates stay as small as the cell.
/// </summary>
public sealed class WidePeriodicTracer
{
    // A ray so nearly parallel to the slope that it crosses more cells than this is taken to have left.
    private const int MaximumCells = 100_000;

    // Rays overlap at the walls by so much of the cell's largest size: no hit may fall between two cells by rounding.
    private const double Overlap = 1e-6;

    // How far from its triangle's box a start may lie [m].
    private const double StartTolerance = 1e-4;

    private readonly Cell _cell;
    private readonly Vector3[] _corners;
    private readonly Copies[] _copies;
    private readonly int[] _triangles;
    private readonly WideHierarchy _hierarchy;
    private readonly double _top;
    private readonly double _overlap;

    public WidePeriodicTracer(Scene scene)
    {
        (_cell, _corners, _copies) = (scene.Cell, scene.Corners, new Copies[scene.TriangleCount]);
        var corners = new List<Vector3>();
        var triangles = new List<int>();
        for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            var own = Corners(triangle);
            foreach (var corner in own) _top = Math.Max(_top, HeightOverSlope(corner));
            var box = BoundingBox.Empty.With(own[0]).With(own[1]).With(own[2]);
            var (lowI, lowJ) = (CellAt(box.Low.X, _cell.Across), CellAt(box.Low.Y, _cell.Along));
            var (highI, highJ) = (CellAt(box.High.X, _cell.Across), CellAt(box.High.Y, _cell.Along));
            _copies[triangle] = new Copies(triangles.Count, lowI, lowJ, highI - lowI + 1, highJ - lowJ + 1);
            for (var i = lowI; i <= highI; i++)
            {
                for (var j = lowJ; j <= highJ; j++)
                {
                    foreach (var corner in own) corners.Add(Rounded(corner - Lattice(i, j)));
                    triangles.Add(triangle);
                }
            }
        }

        _overlap = Overlap * Math.Max(_top, Math.Max(_cell.Across, _cell.Along));
        _triangles = [.. triangles];
        _hierarchy = new WideHierarchy(corners.ToArray());
    }

    /// <summary>Nearest triangle over the ground on a ray's way; null when it goes to the sky or the ground.</summary>
    /// <param name="ray">The ray; its origin may lie anywhere.</param>
    /// <param name="fromTriangle">Triangle that the ray starts on: this one is not hit, copies of it in other cells are; −1 for none.</param>
    public RayHit? Closest(Ray ray, int fromTriangle = -1)
    {
        if (!Follow(ray, fromTriangle, any: false, out var copy, out var distance)) return null;
        var triangle = _triangles[copy];
        var corners = Corners(triangle);
        var upper = Point3.Dot(Point3.Cross(corners[1] - corners[0], corners[2] - corners[0]), ray.Direction) < 0;
        return new RayHit(triangle, distance, upper);
    }

    /// <summary>Whether anything stands in the ray's way before the sky or the ground.</summary>
    public bool IsBlocked(Ray ray, int fromTriangle = -1) => Follow(ray, fromTriangle, any: true, out _, out _);

    private bool Follow(in Ray ray, int fromTriangle, bool any, out int copy, out double distance)
    {
        (copy, distance) = (0, 0);
        var rise = HeightOverSlope(ray.Direction);
        var height = HeightOverSlope(ray.Origin);

        // The ray is above all triangles up to entry, and above them or under the ground beyond end.
        var entry = rise < 0 ? Math.Max(0, (_top - height) / rise) : 0;
        var end = rise > 0 ? Math.Max(0, (_top - height) / rise) : rise < 0 ? Math.Max(0, -height / rise) : double.PositiveInfinity;
        var direction = Rounded(ray.Direction);
        var from = fromTriangle < 0 ? null : CellOfStart(ray.Origin, fromTriangle);
        var first = ray.At(entry);
        var (i, j) = (CellAt(first.X, _cell.Across), CellAt(first.Y, _cell.Along));
        for (var cells = 0; cells < MaximumCells; cells++)
        {
            // Leaves the cell at the nearer of its two walls ahead; walls are counted, not walked, so rounding does not pile up.
            var wallX = Wall(ray.Origin.X, ray.Direction.X, i, _cell.Across);
            var wallY = Wall(ray.Origin.Y, ray.Direction.Y, j, _cell.Along);
            var exit = Math.Min(wallX, wallY);
            var start = Math.Max(0, entry - _overlap);
            var origin = Rounded(ray.At(start) - Lattice(i, j));
            var limit = (float)(Math.Min(exit, end) - start + _overlap);
            var except = from is { } own ? _copies[fromTriangle].At(i - own.I, j - own.J) : -1;
            if (any && _hierarchy.IsBlocked(origin, direction, limit, except)) return true;
            if (!any && _hierarchy.Closest(origin, direction, limit, except) is { } hit)
            {
                (copy, distance) = (hit.Triangle, start + hit.Distance);
                return true;
            }

            if (exit >= end) return false;
            if (wallX <= wallY) i += ray.Direction.X > 0 ? 1 : -1;
            else j += ray.Direction.Y > 0 ? 1 : -1;
            entry = exit;
        }

        return false;
    }

    // By how many cells the scene's triangle is moved to lie where the ray starts; of several, which a triangle larger than the
    // cell has, the one whose plane is nearest.
    private (int I, int J)? CellOfStart(Point3 start, int triangle)
    {
        var corners = Corners(triangle);
        var box = BoundingBox.Empty.With(corners[0]).With(corners[1]).With(corners[2]);
        var normal = Point3.Cross(corners[1] - corners[0], corners[2] - corners[0]);
        ((int, int)? best, var least) = (null, double.PositiveInfinity);
        for (var i = (int)Math.Ceiling((start.X - box.High.X - StartTolerance) / _cell.Across); i <= CellAt(start.X - box.Low.X + StartTolerance, _cell.Across); i++)
        {
            for (var j = (int)Math.Ceiling((start.Y - box.High.Y - StartTolerance) / _cell.Along); j <= CellAt(start.Y - box.Low.Y + StartTolerance, _cell.Along); j++)
            {
                var off = Math.Abs(Point3.Dot(normal, start - Lattice(i, j) - corners[0]));
                if (off < least) (best, least) = ((i, j), off);
            }
        }

        return best;
    }

    private Corner3 Corners(int triangle)
    {
        var corners = default(Corner3);
        for (var corner = 0; corner < 3; corner++) corners[corner] = Point3.From(_corners[(3 * triangle) + corner]);
        return corners;
    }

    private double HeightOverSlope(Point3 point) => point.Z - (_cell.RiseAcross * point.X) - (_cell.RiseAlong * point.Y);

    private Point3 Lattice(int i, int j) => new(
        i * _cell.Across,
        j * _cell.Along,
        (i * _cell.Across * _cell.RiseAcross) + (j * _cell.Along * _cell.RiseAlong));

    private static int CellAt(double coordinate, double size) => (int)Math.Floor(coordinate / size);

    private static Vector3 Rounded(Point3 point) => new((float)point.X, (float)point.Y, (float)point.Z);

    private static double Wall(double origin, double direction, int index, double size) => direction switch
    {
        > 0 => (((index + 1) * size) - origin) / direction,
        < 0 => ((index * size) - origin) / direction,
        _ => double.PositiveInfinity,
    };

    [InlineArray(3)]
    private struct Corner3
    {
        private Point3 _first;
    }

    /// <summary>A triangle as it stands in the tree, once for every cell that it touches: cells low to low + count.</summary>
    private readonly record struct Copies(int First, int LowI, int LowJ, int CountI, int CountJ)
    {
        /// <summary>The copy moved back by so many cells; −1 where it does not touch the cell.</summary>
        public int At(int i, int j)
        {
            var (row, column) = (i - LowI, j - LowJ);
            return (uint)row < (uint)CountI && (uint)column < (uint)CountJ ? First + (row * CountJ) + column : -1;
        }
    }
}
