using System.Numerics;
using CanopySim.RayTracing;

namespace CanopySim.Light;

/// <summary>What falls on the block in one moment, in the frame of the cell.</summary>
public sealed record IncidentLight
{
    /// <summary>Unit vector towards the sun; null when it is down.</summary>
    public Vector3? SunDirection { get; init; }

    /// <summary>Direct normal irradiance, PAR [W m⁻²].</summary>
    public double DirectNormalPar { get; init; }

    /// <summary>Direct normal irradiance, NIR [W m⁻²].</summary>
    public double DirectNormalNir { get; init; }

    /// <summary>Diffuse irradiance of a horizontal plane, PAR [W m⁻²].</summary>
    public double DiffuseHorizontalPar { get; init; }

    /// <summary>Diffuse irradiance of a horizontal plane, NIR [W m⁻²].</summary>
    public double DiffuseHorizontalNir { get; init; }

    /// <summary>
    /// Relative radiance of the sky in each of the geometry's directions, any scale; null for a uniform sky. It is scaled so that
    /// a horizontal plane in the open receives the diffuse irradiance given above; a slope then misses what its hillside hides.
    /// </summary>
    public double[]? SkyRadiance { get; init; }

    /// <summary>
    /// The same radiance towards any unit vector above the horizon, in the frame of the cell, any scale: sensors look between the
    /// geometry's directions. Null: they take that of the nearest direction.
    /// </summary>
    public Func<Point3, double>? SkyRadianceTowards { get; init; }
}
