using CanopySim.RayTracing;

namespace CanopySim.Light;

/// <summary>A place in the cell where light is asked for, and how it is looked at there.</summary>
/// <param name="Point">Where [m], in the frame of the cell; its copies in other cells are the same place.</param>
/// <param name="Facing">
/// What a flat sensor faces: it weighs light with the cosine to this, over the half of all directions before it. Null: a small
/// sphere, which takes all directions alike.
/// </param>
public readonly record struct LightSensor(Point3 Point, Point3? Facing);

/// <summary>
/// Irradiance of a sensor [W m⁻²] by the way that light came: straight from the sun, straight from the sky, or sent on by blades,
/// wood, fruit and ground. Of a sphere it is what falls on it per area of its surface: a quarter of the scalar irradiance
/// (fluence rate) that spherical sensors often report.
/// </summary>
public readonly record struct SensorIrradiance(double Direct, double Diffuse, double Scattered)
{
    public double Total => Direct + Diffuse + Scattered;
}

/// <summary>What a sensor reads in one moment.</summary>
public readonly record struct SensorReading(SensorIrradiance Par, SensorIrradiance Nir);
