using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.RayTracing;

namespace CanopySim.Tests.Light;

/// <summary>Short ways to what sensors read in a test scene.</summary>
internal static class SensorCases
{
    public static Point3 Up { get; } = new(0, 0, 1);

    public static Point3 Down { get; } = new(0, 0, -1);

    public static LightSensor At(double x, double y, double z, Point3? facing) => new(new Point3(x, y, z), facing);

    public static Point3 Tilted(double zenith, double azimuth) => Point3.From(SkyRings.Direction(zenith, azimuth)).Normalized();

    /// <summary>A cell of bare ground in its simplest geometry.</summary>
    public static LightGeometry Bare(in Cell cell, int directions = 200) =>
        LightGeometry.Build(new RandomScenes(cell).Build(), SkyRings.Spiral(directions), LightCases.Quality(0.02, 0.02), 2);

    /// <summary>PAR that sensors read in one hour.</summary>
    public static SensorIrradiance[] Par(
        LightGeometry geometry, IncidentLight hour, Optics optics, IReadOnlyList<LightSensor> sensors, int rays = LightSensors.DefaultRays)
    {
        var radiosity = geometry.SolveWithRadiosity([hour], optics, 2).Radiosity;
        return Array.ConvertAll(LightSensors.Place(geometry, sensors, 2, rays).Read(radiosity, 2)[0], reading => reading.Par);
    }

    /// <summary>Sky and sun together; NIR is twice PAR.</summary>
    public static IncidentLight Day(Vector3 sun) => new()
    {
        SunDirection = sun,
        DirectNormalPar = 300,
        DirectNormalNir = 600,
        DiffuseHorizontalPar = 100,
        DiffuseHorizontalNir = 200,
    };
}
