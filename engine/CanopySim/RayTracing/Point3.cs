using System.Numerics;

namespace CanopySim.RayTracing;

/// <summary>A point or vector in double precision [m].</summary>
public readonly record struct Point3(double X, double Y, double Z)
{
    public static Point3 operator +(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Point3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Point3 operator *(double factor, Point3 a) => new(factor * a.X, factor * a.Y, factor * a.Z);

    public static Point3 From(Vector3 vector) => new(vector.X, vector.Y, vector.Z);

    public static double Dot(Point3 a, Point3 b) => (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

    public static Point3 Cross(Point3 a, Point3 b) =>
        new((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));

    public static Point3 Min(Point3 a, Point3 b) => new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Min(a.Z, b.Z));

    public static Point3 Max(Point3 a, Point3 b) => new(Math.Max(a.X, b.X), Math.Max(a.Y, b.Y), Math.Max(a.Z, b.Z));

    public double Along(int axis) => axis switch { 0 => X, 1 => Y, _ => Z };

    public Point3 Normalized() => (1 / Math.Sqrt(Dot(this, this))) * this;
}
