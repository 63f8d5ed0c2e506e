using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>
/// A cell and four of them side by side as one: 20,000 triangles make 80,000, 10,000 surfaces make 40,000, so that what counts
/// triangles, facets, faces or their keys passes 2¹⁴, 2¹⁵ and 2¹⁶ on the way. Each copy must have what the one cell had.
/// </summary>
/// <remarks>
/// Across the copies the columns are shifted by whole numbers, exactly, since corners are multiples of 2⁻¹² m and the light comes
/// along the row; only where a slanting edge is rounded does its place matter: by 2⁻¹⁴ of a pixel at column 1,000, at both ends of
/// a row of pixels. So one row in 8,000, of some three pixels, may gain or lose one; one pixel in 5,000 is allowed.
/// </remarks>
public class WideCellTests
{
    private const int Copies = 4;
    private const int Blades = 10_000;
    private const double Pixel = 1.0 / 256;

    private static readonly Scene One = Wide(1);

    private static readonly Scene Four = Wide(Copies);

    // Heights of grids come out whole for these: 256 · 0.5 and 256 · 0.75 rows.
    [Theory]
    [InlineData(1)]
    [InlineData(0.5)]
    [InlineData(0.75)]
    public void Four_cells_have_four_times_the_sun_of_one(double vertical)
    {
        Assert.True(Four.TriangleCount > 65_536 && new FacetList(Four).Count > 65_536 && 2 * Four.SurfaceCount > 65_536);
        var sun = Along(vertical);
        var (one, four) = (SunCounts.Of(One, sun, Pixel), SunCounts.Of(Four, sun, Pixel));
        var (different, seen) = (0L, 0L);
        for (var copy = 0; copy < Copies; copy++)
        {
            for (var face = 0; face < 2 * Blades; face++)
            {
                different += Math.Abs(one.Pixels[face] - four.Pixels[(2 * Blades * copy) + face]);
                seen += one.Pixels[face];
            }
        }

        TestContext.Current.SendDiagnosticMessage($"pixels {seen}, different {different}");
        Assert.InRange(seen, 100_000, long.MaxValue);
        Assert.InRange(different, 0, seen / 5_000);
        Assert.InRange(four.Pixels[^1] - (Copies * one.Pixels[^1]), -seen / 5_000, seen / 5_000);
        Assert.Equal(Copies * one.SunlitShares.Sum(), four.SunlitShares.Sum(), 1e-3 * four.SunlitShares.Sum());
    }

    [Fact]
    public void Four_cells_have_four_times_the_links_of_one()
    {
        Vector3[] directions = [Along(1), Along(0.5), Along(0.75)];
        var one = Pairs(LightGeometry.Build(One, directions, LightCases.Quality(Pixel, 1), 2));
        var four = Pairs(LightGeometry.Build(Four, directions, LightCases.Quality(Pixel, 1), 2));
        var (different, links) = (0L, 0L);
        foreach (var pair in one.Keys.Concat(four.Keys).Distinct())
        {
            var expected = Copies * one.GetValueOrDefault(pair);
            different += Math.Abs(four.GetValueOrDefault(pair) - expected);
            links += expected;
        }

        TestContext.Current.SendDiagnosticMessage($"links {links}, different {different}");
        Assert.InRange(links, 1_500_000, long.MaxValue);
        // A pixel that changes takes two lines of light apart, each of two ends.
        Assert.InRange(different, 0, links / 5_000);

        // Copies of one cell at a time, so that a key that wraps from one to another is seen.
        static Dictionary<(int, int), long> Pairs(LightGeometry geometry)
        {
            var (pairs, nodes) = (new Dictionary<(int, int), long>(), geometry.Nodes);
            foreach (var ((receiver, sender), count) in LinkCounts.Of(geometry))
            {
                var pair = (Own(receiver), Own(sender));
                pairs[pair] = pairs.GetValueOrDefault(pair) + count;
            }

            return pairs;
            int Own(int node) => node < 0 ? node : node >= nodes.FirstGround ? int.MaxValue : node % (2 * Blades);
        }
    }

    [Fact]
    public void Light_of_the_wide_cell_is_the_light_of_the_narrow()
    {
        Vector3[] directions = [Along(1), Along(0.5), Along(0.75)];
        IncidentLight[] hours = [LightCases.UniformSky(100), LightCases.Sun(Along(0.75), 500)];
        LightSolution Solve(Scene scene) => LightGeometry.Build(scene, directions, LightCases.Quality(Pixel, Pixel), 2).Solve(hours, new Optics(), 2);
        var (one, four) = (Solve(One), Solve(Four));
        for (var hour = 0; hour < hours.Length; hour++)
        {
            Assert.Equal(one.ParBudgets[hour].AbsorbedLeaves, four.ParBudgets[hour].AbsorbedLeaves, 1e-3 * one.ParBudgets[hour].AbsorbedLeaves);
            Assert.Equal(one.NirBudgets[hour].Reflected, four.NirBudgets[hour].Reflected, 1e-3 * one.NirBudgets[hour].Reflected);
            Assert.InRange(four.NirBudgets[hour].Closure, 0, 1e-5);
            for (var copy = 0; copy < Copies; copy++)
            {
                var (own, sum) = (one.AbsorbedPar.AsSpan(one.IndexOf(hour, 0), Blades).ToArray().Sum(), 0.0);
                for (var blade = 0; blade < Blades; blade++) sum += four.AbsorbedPar[four.IndexOf(hour, (copy * Blades) + blade)];
                Assert.Equal(own, sum, 2e-3 * own);
            }
        }
    }

    private static Vector3 Along(double vertical) => new(0, (float)Math.Sqrt(1 - (vertical * vertical)), (float)vertical);

    // Blades of two triangles that do not lie in one plane, over the cell's edges too.
    private static Scene Wide(int copies)
    {
        var scenes = new RandomScenes(new Cell(copies, 1));
        for (var copy = 0; copy < copies; copy++)
        {
            for (var blade = 0; blade < Blades; blade++)
            {
                double Value(string purpose) => SeededValue.Uniform(61, purpose, blade);
                var corner = new Vector3(copy + Dyadic(Value("x")), Dyadic(Value("y")), Dyadic(0.1 + (0.8 * Value("z"))));
                var (first, second) = (Edge("first"), Edge("second"));
                var surface = scenes.AddSurface(SurfaceKind.Blade);
                scenes.AddTriangle(surface, corner, corner + first, corner + second);
                scenes.AddTriangle(surface, corner, corner + second, corner + second - first + new Vector3(0, 0, 1 / 256f));
                Vector3 Edge(string name) =>
                    new(Dyadic(0.03 * (Value(name + " x") - 0.5)), Dyadic(0.03 * (Value(name + " y") - 0.5)), Dyadic(0.03 * (Value(name + " z") - 0.5)));
            }
        }

        return scenes.Build();
    }

    private static float Dyadic(double value) => (float)(Math.Round(value * 4096) / 4096);
}
