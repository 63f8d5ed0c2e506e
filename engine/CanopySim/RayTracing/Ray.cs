namespace CanopySim.RayTracing;

/// <summary>A ray from a point [m] along a unit vector.</summary>
public readonly record struct Ray(Point3 Origin, Point3 Direction)
{
    public Point3 At(double distance) => Origin + (distance * Direction);
}

/// <summary>Where a ray meets a triangle.</summary>
/// <param name="Triangle">Its number in the scene.</param>
/// <param name="Distance">From the origin [m].</param>
/// <param name="UpperSide">Whether the ray comes at the upper or outer side.</param>
public readonly record struct RayHit(int Triangle, double Distance, bool UpperSide);
