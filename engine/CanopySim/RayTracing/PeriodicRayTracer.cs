using CanopySim.Geometry;

namespace CanopySim.RayTracing;

/// <summary>
/// Rays through the endless field of copies of one cell: a ray that leaves the cell enters again on the other side. It shares
/// nothing with the light raster, so that each can be checked against the other. Triangles that reach over an edge stand in
/// the tree once for every cell that they touch.
/// </summary>
public sealed class PeriodicRayTracer
{
    // A ray so nearly parallel to the slope that it crosses more cells than this is taken to have left.
    private const int MaximumCells = 100_000;

    // A ray starts on a triangle only within rounding.
    private const double OriginTolerance = 1e-9;

    private readonly Cell _cell;
    private readonly BoundingVolumeHierarchy _hierarchy;
    private readonly int[] _triangles;
    private readonly Point3[] _corners;
    private readonly double _top;

    public PeriodicRayTracer(Scene scene)
    {
        _cell = scene.Cell;
        var corners = new List<Point3>();
        var triangles = new List<int>();
        for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            var own = new Point3[3];
            for (var corner = 0; corner < 3; corner++)
            {
                own[corner] = Point3.From(scene.Corners[(3 * triangle) + corner]);
                _top = Math.Max(_top, HeightOverSlope(own[corner]));
            }

            var box = BoundingBox.Empty.With(own[0]).With(own[1]).With(own[2]);
            for (var i = (int)Math.Floor(box.Low.X / _cell.Across); i <= Math.Floor(box.High.X / _cell.Across); i++)
            {
                for (var j = (int)Math.Floor(box.Low.Y / _cell.Along); j <= Math.Floor(box.High.Y / _cell.Along); j++)
                {
                    foreach (var corner in own) corners.Add(corner - Lattice(i, j));
                    triangles.Add(triangle);
                }
            }
        }

        (_corners, _triangles) = ([.. corners], [.. triangles]);
        _hierarchy = new BoundingVolumeHierarchy(_corners);
    }

    /// <summary>Nearest triangle over the ground on a ray's way; null when it goes to the sky or the ground.</summary>
    /// <param name="ray">The ray; its origin may lie anywhere.</param>
    /// <param name="fromTriangle">Triangle that the ray starts on, which it does not hit at the start; −1 for none.</param>
    public RayHit? Closest(Ray ray, int fromTriangle = -1) => Follow(ray, fromTriangle, any: false);

    /// <summary>Whether anything stands in the ray's way before the sky or the ground.</summary>
    public bool IsBlocked(Ray ray, int fromTriangle = -1) => Follow(ray, fromTriangle, any: true) is not null;

    private RayHit? Follow(Ray ray, int fromTriangle, bool any)
    {
        var rise = HeightOverSlope(ray.Direction);
        var height = HeightOverSlope(ray.Origin);

        // Beyond this the ray is above all triangles or under the ground.
        var end = rise > 0 ? Math.Max(0, (_top - height) / rise) : rise < 0 ? Math.Max(0, -height / rise) : double.PositiveInfinity;
        end = (end * (1 + 1e-12)) + 1e-12;
        var (i, j) = ((int)Math.Floor(ray.Origin.X / _cell.Across), (int)Math.Floor(ray.Origin.Y / _cell.Along));
        for (var cells = 0; cells < MaximumCells; cells++)
        {
            // Leaves the cell at the nearer of its two walls ahead; walls are counted, not walked, so rounding does not pile up.
            var wallX = Wall(ray.Origin.X, ray.Direction.X, i, _cell.Across);
            var wallY = Wall(ray.Origin.Y, ray.Direction.Y, j, _cell.Along);
            var exit = Math.Min(wallX, wallY);
            var local = ray with { Origin = ray.Origin - Lattice(i, j) };
            bool Skip(int instance, double distance) => _triangles[instance] == fromTriangle && distance < OriginTolerance;
            var limit = Math.Min(exit, end);
            if (_hierarchy.Find(local, limit, Skip, any) is { } hit)
            {
                var (a, b, c) = (_corners[3 * hit.Triangle], _corners[(3 * hit.Triangle) + 1], _corners[(3 * hit.Triangle) + 2]);
                var upper = Point3.Dot(Point3.Cross(b - a, c - a), ray.Direction) < 0;
                return new RayHit(_triangles[hit.Triangle], hit.Distance, upper);
            }

            if (exit >= end) return null;
            if (wallX <= wallY) i += ray.Direction.X > 0 ? 1 : -1;
            else j += ray.Direction.Y > 0 ? 1 : -1;
        }

        return null;
    }

    private static double Wall(double origin, double direction, int index, double size) => direction switch
    {
        > 0 => (((index + 1) * size) - origin) / direction,
        < 0 => ((index * size) - origin) / direction,
        _ => double.PositiveInfinity,
    };

    private double HeightOverSlope(Point3 point) => point.Z - (_cell.RiseAcross * point.X) - (_cell.RiseAlong * point.Y);

    private Point3 Lattice(int i, int j) => new(
        i * _cell.Across,
        j * _cell.Along,
        (i * _cell.Across * _cell.RiseAcross) + (j * _cell.Along * _cell.RiseAlong));
}
