using System.Globalization;
using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>
/// Horizontally uniform canopies of small leaves with spherical normals against the project's own photon tracing in the turbid
/// limit, 400,000 photons a row (standard error below 0.0008): <c>homogeneous_canopy.csv</c>, rows of the project's reference
/// table for leaf optics 0.08 + 0.04 (PAR) and 0.45 + 0.40 (NIR).
/// </summary>
public class HomogeneousCanopyTests
{
    private const float Side = 0.03f;

    // Leaves have a size and the scene is one throw of them: gaps lie below the exponential by the binomial law, and its draw
    // scatters the gap. Measured over these rows: within 0.011 of the incident light.
    private const double Tolerance = 0.015;

    private static readonly Dictionary<double, LightGeometry> Geometries = [];

    public static TheoryData<string> Rows => [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Light", "homogeneous_canopy.csv")).Skip(1)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Albedo_and_absorption_are_those_of_the_turbid_canopy(string row)
    {
        var cells = row.Split(',');
        double Number(int index) => double.Parse(cells[index], CultureInfo.InvariantCulture);
        var geometry = Geometry(Number(1));
        var zenith = Number(5);
        var hour = zenith < 0 ? LightCases.UniformSky() : LightCases.Sun(SkyRings.Direction(zenith, 30), 1 / Math.Cos(zenith * Math.PI / 180));
        var solution = geometry.Solve([hour], LightCases.Uniform(Number(2), Number(3), 0, Number(4)), 2);
        var budget = solution.NirBudgets[0];
        Assert.Equal(Number(6), budget.Reflected, Tolerance);
        Assert.Equal(Number(7), budget.AbsorbedLeaves, Tolerance);
        Assert.Equal(Number(8), budget.AbsorbedGround, Tolerance);
        Assert.Equal(Number(9), zenith < 0 ? geometry.SkyGapFraction : solution.GroundSunlitFraction[0], Tolerance);
    }

    private static LightGeometry Geometry(double leafAreaIndex)
    {
        lock (Geometries)
        {
            if (Geometries.TryGetValue(leafAreaIndex, out var known)) return known;
            var scenes = new RandomScenes(new Cell(1, 1));
            for (var leaf = 0; leaf < leafAreaIndex / (Side * Side); leaf++)
            {
                double Value(string purpose) => SeededValue.Uniform(51, purpose, leaf);
                var (first, second) = RandomScenes.Frame(Value("height"), Value("azimuth"), Value("turn"));
                var center = new Vector3((float)Value("x"), (float)Value("y"), (float)(0.1 + (2 * Value("z"))));
                scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), center - (0.5f * Side * (first + second)), Side * first, Side * second);
            }

            return Geometries[leafAreaIndex] = LightGeometry.Build(scenes.Build(), SkyRings.Spiral(290), LightCases.Quality(0.008, 0.004), 2);
        }
    }
}
