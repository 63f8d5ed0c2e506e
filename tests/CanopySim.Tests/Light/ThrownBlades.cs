using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;

namespace CanopySim.Tests.Light;

/// <summary>Square blades of one size thrown independently of each other into a box of the cell.</summary>
internal sealed record ThrownBlades(Scene Scene, Vector3[] Normals, double Side)
{
    /// <param name="cell">The cell.</param>
    /// <param name="count">Blades.</param>
    /// <param name="side">Edge of a blade [m].</param>
    /// <param name="angles">Their inclinations; azimuths are even.</param>
    /// <param name="low">Lowest corner of the box that holds their centers.</param>
    /// <param name="size">Its size.</param>
    /// <param name="seed">The throw.</param>
    public static ThrownBlades Into(Cell cell, int count, double side, BladeAngles angles, Vector3 low, Vector3 size, int seed)
    {
        var scenes = new RandomScenes(cell);
        var normals = new Vector3[count];
        for (var blade = 0; blade < count; blade++)
        {
            double Value(string purpose) => SeededValue.Uniform(61, purpose, seed, blade);
            var (first, second) = Edges(angles, Value("inclination"), Value("azimuth"), Value("turn"));
            var center = low + (size * new Vector3((float)Value("x"), (float)Value("y"), (float)Value("z")));
            normals[blade] = Vector3.Cross(first, second);
            scenes.AddQuad(
                scenes.AddSurface(SurfaceKind.Blade), center - (0.5f * (float)side * (first + second)), (float)side * first, (float)side * second);
        }

        return new ThrownBlades(scenes.Build(), normals, side);
    }

    /// <summary>Unit vectors along the edges of a blade, from three uniform values.</summary>
    public static (Vector3 First, Vector3 Second) Edges(BladeAngles angles, double inclination, double azimuth, double turn) =>
        RandomScenes.Frame(Math.Cos(angles.Inclination(inclination)), azimuth, turn);
}

/// <summary>Mean of independent values and its standard error.</summary>
internal readonly record struct Estimate(double Mean, double StandardError)
{
    public static Estimate Of(IReadOnlyCollection<double> values)
    {
        var mean = values.Average();
        var variance = values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1);
        return new Estimate(mean, Math.Sqrt(variance / values.Count));
    }
}
