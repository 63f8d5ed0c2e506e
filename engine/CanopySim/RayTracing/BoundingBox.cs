namespace CanopySim.RayTracing;

/// <summary>A box along the axes [m].</summary>
public readonly record struct BoundingBox(Point3 Low, Point3 High)
{
    public static BoundingBox Empty { get; } = new(
        new Point3(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity),
        new Point3(double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity));

    public Point3 Center => 0.5 * (Low + High);

    /// <summary>Half of the surface [m²]; 0 when empty.</summary>
    public double HalfSurface
    {
        get
        {
            var size = High - Low;
            return size.X < 0 ? 0 : (size.X * size.Y) + (size.Y * size.Z) + (size.Z * size.X);
        }
    }

    public BoundingBox With(BoundingBox other) => new(Point3.Min(Low, other.Low), Point3.Max(High, other.High));

    public BoundingBox With(Point3 point) => new(Point3.Min(Low, point), Point3.Max(High, point));

    /// <summary>Whether a ray meets the box between its origin and a distance [m]. A ray along a face counts as meeting it.</summary>
    public bool Meets(in Ray ray, double limit)
    {
        var (near, far) = (0.0, limit);
        for (var axis = 0; axis < 3; axis++)
        {
            var (origin, direction) = (ray.Origin.Along(axis), ray.Direction.Along(axis));
            if (direction == 0)
            {
                if (origin < Low.Along(axis) || origin > High.Along(axis)) return false;
                continue;
            }

            var (a, b) = ((Low.Along(axis) - origin) / direction, (High.Along(axis) - origin) / direction);

            // The rounding of three operations, or a flat box would lose the triangle that lies in it.
            const double Slack = 1 + 4e-16;
            near = Math.Max(near, Math.Min(a, b) / Slack);
            far = Math.Min(far, Math.Max(a, b) * Slack);
        }

        return near <= far;
    }
}
