using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;

namespace CanopySim.Tests.Light;

/// <summary>Short ways to the light of a test scene.</summary>
internal static class LightCases
{
    public static Optics Black { get; } = Uniform(0, 0, 0, 0);

    /// <summary>PAR and NIR alike.</summary>
    public static Optics Uniform(double reflectance, double transmittance, double wood, double ground) => new()
    {
        LeafParReflectance = reflectance,
        LeafParTransmittance = transmittance,
        LeafNirReflectance = reflectance,
        LeafNirTransmittance = transmittance,
        WoodParReflectance = wood,
        WoodNirReflectance = wood,
        GroundParReflectance = ground,
        GroundNirReflectance = ground,
    };

    public static LightQuality Quality(double skyPixel, double sunPixel, double tolerance = 1e-6) => new()
    {
        SkyDirectionCount = 0,
        SkyPixel = skyPixel,
        SunPixel = sunPixel,
        SolverTolerance = tolerance,
    };

    public static IncidentLight Sun(Vector3 direction, double normal = 1) => new()
    {
        SunDirection = direction,
        DirectNormalPar = normal,
        DirectNormalNir = normal,
    };

    public static IncidentLight UniformSky(double horizontal = 1) => new()
    {
        DiffuseHorizontalPar = horizontal,
        DiffuseHorizontalNir = horizontal,
    };

    /// <summary>Light of the sun alone; one sky direction is enough where nothing scatters.</summary>
    public static LightSolution SunOnly(Scene scene, Vector3 direction, double pixel) =>
        LightGeometry.Build(scene, [Vector3.UnitZ], Quality(0.05, pixel), 1).Solve([Sun(direction)], Black, 1);
}
