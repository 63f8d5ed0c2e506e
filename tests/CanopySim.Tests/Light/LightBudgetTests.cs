using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>Energy, bits and limits.</summary>
public class LightBudgetTests
{
    // All light that comes in goes out again when nothing absorbs.
    [Fact]
    public void White_surfaces_send_everything_back()
    {
        var geometry = LightGeometry.Build(FurnaceScene(), SkyRings.Spiral(145), LightCases.Quality(0.012, 0.008, 1e-7), 2);
        var light = geometry.Solve(
            [LightCases.UniformSky(100), LightCases.Sun(SkyRings.Direction(40, 70), 100)], LightCases.Uniform(0.6, 0.4, 1, 1), 2);

        // Where two faces of a box meet at its outline their heights differ by less than rounding: a few lines see its inside.
        Assert.InRange(geometry.InsideLinkShare, 0, 3e-5);
        foreach (var budget in light.NirBudgets)
        {
            Assert.InRange(budget.Closure, 0, 1e-5);
            Assert.Equal(budget.Incident, budget.Reflected, 1e-4 * budget.Incident);
            Assert.Equal(0, budget.AbsorbedLeaves + budget.AbsorbedGround, 1e-6 * budget.Incident);
        }
    }

    // White furnace: under a uniform sky and among white surfaces the irradiance is the same everywhere, on both sides of every
    // blade. Blades that keep 1 part in 4,096 tell it without changing it by more than a few such parts.
    [Fact]
    public void Under_a_uniform_sky_white_surfaces_receive_the_same_everywhere()
    {
        const double Kept = 1.0 / 4096;
        var scene = FurnaceScene();
        var geometry = LightGeometry.Build(scene, SkyRings.Spiral(580), LightCases.Quality(0.006, 0.008, 1e-8), 2);
        var light = geometry.Solve([LightCases.UniformSky(100)], LightCases.Uniform(0.5, 0.5 - Kept, 1, 1), 2);
        var areas = scene.SurfaceAreas();
        for (var surface = 0; surface < scene.SurfaceCount; surface++)
        {
            if (scene.Kinds[surface] != SurfaceKind.Blade) continue;
            var irradiance = light.AbsorbedPar[surface] / (2 * areas[surface] * Kept);
            Assert.True(Math.Abs(irradiance - 100) < 1.5, $"blade {surface}: {irradiance}");
        }
    }

    [Theory]
    [InlineData(1, 0, 0)]
    [InlineData(2, 0.3, 0)]
    [InlineData(3, -0.1, 0.15)]
    public void The_budget_closes_and_surfaces_add_up_to_it(ulong seed, double riseAcross, double riseAlong)
    {
        // Leaves stick in wood and clusters here: what looks inside must not be lost.
        var scene = RandomScenes.Hedge(150, seed, new Cell(1.2, 0.8, riseAcross, riseAlong));
        var directions = SkyRings.Spiral(100);
        var geometry = LightGeometry.Build(scene, directions, LightQuality.Standard, 2);
        var light = geometry.Solve(Day(), new Optics(), 2);
        Assert.InRange(geometry.InsideLinkShare, 1e-6, 0.05);
        for (var hour = 0; hour < light.HourCount; hour++)
        {
            foreach (var (budget, absorbed) in new[] { (light.ParBudgets[hour], light.AbsorbedPar), (light.NirBudgets[hour], light.AbsorbedNir) })
            {
                Assert.InRange(budget.Closure, 0, 2e-5);
                var sum = absorbed.AsSpan(light.IndexOf(hour, 0), scene.SurfaceCount).ToArray().Sum() / scene.Cell.GroundArea;
                Assert.Equal(budget.AbsorbedLeaves + budget.AbsorbedWood + budget.AbsorbedClusters, sum, 1e-9 * Math.Max(1, sum));
            }

            for (var surface = 0; surface < scene.SurfaceCount; surface++)
            {
                var at = light.IndexOf(hour, surface);
                Assert.InRange(light.SunlitShare[at], 0, 1);
                Assert.InRange(light.AbsorbedParDirect[at], 0, light.AbsorbedPar[at] * (1 + 1e-5));
            }
        }
    }

    [Fact]
    public void Threads_change_no_bit()
    {
        var scene = RandomScenes.Hedge(200, 4, new Cell(1.2, 0.8));
        LightSolution Solve(int threads) =>
            LightGeometry.Build(scene, SkyRings.Spiral(60), LightQuality.Standard, threads).Solve(Day(), new Optics(), threads);
        var one = Solve(1);
        foreach (var threads in (int[])[2, 3])
        {
            var many = Solve(threads);
            Assert.Equal(one.AbsorbedPar, many.AbsorbedPar);
            Assert.Equal(one.AbsorbedNir, many.AbsorbedNir);
            Assert.Equal(one.AbsorbedParDirect, many.AbsorbedParDirect);
            Assert.Equal(one.SunlitShare, many.SunlitShare);
            Assert.Equal(one.ParBudgets, many.ParBudgets);
            Assert.Equal(one.NirBudgets, many.NirBudgets);
        }
    }

    // Two blades in one plane, and one with the bits of the other; triangles without area or seen edge on.
    [Fact]
    public void Coincident_and_degenerate_triangles_lose_no_light()
    {
        var scenes = new RandomScenes(new Cell(1, 1));
        for (var copy = 0; copy < 3; copy++)
            scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), new Vector3(0.2f, 0.2f, 0.5f), new Vector3(0.4f, 0, 0), new Vector3(0, 0.4f, 0));
        var broken = scenes.AddSurface(SurfaceKind.Blade);
        scenes.AddTriangle(broken, new Vector3(0.1f, 0.1f, 1), new Vector3(0.1f, 0.1f, 1), new Vector3(0.1f, 0.1f, 1));
        scenes.AddTriangle(broken, new Vector3(0.1f, 0.1f, 1), new Vector3(0.2f, 0.2f, 1), new Vector3(0.4f, 0.4f, 1));
        scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), new Vector3(0.5f, 0.2f, 0.6f), new Vector3(0, 0.4f, 0), new Vector3(0, 0, 0.3f));
        var geometry = LightGeometry.Build(scenes.Build(), SkyRings.Spiral(100), LightCases.Quality(0.01, 0.01), 2);
        var light = geometry.Solve([LightCases.Sun(Vector3.UnitZ), LightCases.UniformSky()], new Optics(), 2);
        Assert.Equal(0.16, light.SunlitShare[..3].Sum() * 0.16, 1e-12);
        Assert.Equal(0, light.AbsorbedPar[3]);
        Assert.Equal(0, light.SunlitShare[4]);
        Assert.All(light.ParBudgets.Concat(light.NirBudgets), budget => Assert.InRange(budget.Closure, 0, 1e-5));
    }

    [Fact]
    public void More_light_gives_more_in_proportion()
    {
        var geometry = LightGeometry.Build(RandomScenes.Hedge(50, 6, new Cell(1, 1)), SkyRings.Spiral(60), LightQuality.Standard, 1);
        var sun = SkyRings.Direction(30, 100);
        var light = geometry.Solve([LightCases.Sun(sun, 1), LightCases.Sun(sun, 800)], new Optics(), 1);
        for (var surface = 0; surface < light.SurfaceCount; surface++)
            Assert.Equal(800 * light.AbsorbedNir[surface], light.AbsorbedNir[light.IndexOf(1, surface)], 1e-3 * 800 * light.AbsorbedNir[surface]);
    }

    [Fact]
    public void Nonsense_is_refused()
    {
        var scene = new RandomScenes(new Cell(1, 1)).Build();
        var geometry = LightGeometry.Build(scene, SkyRings.Spiral(10), LightQuality.Standard, 1);
        Assert.Throws<ArgumentException>(() => LightGeometry.Build(scene, [], LightQuality.Standard, 1));
        Assert.Throws<ArgumentException>(() => geometry.Solve([LightCases.UniformSky(double.NaN)], new Optics(), 1));
        Assert.Throws<ArgumentException>(() => geometry.Solve([LightCases.UniformSky() with { SkyRadiance = new double[3] }], new Optics(), 1));
        Assert.Throws<ArgumentException>(() => geometry.Solve([LightCases.UniformSky()], LightCases.Uniform(0.7, 0.4, 0, 0), 1));
    }

    private static IncidentLight[] Day() =>
    [
        .. Enumerable.Range(0, 11).Select(hour => new IncidentLight
        {
            SunDirection = hour == 0 ? null : SkyRings.Direction(88 - (6 * hour), 35 * hour),
            DirectNormalPar = 300,
            DirectNormalNir = 280,
            DiffuseHorizontalPar = 20 * hour,
            DiffuseHorizontalNir = 10 * hour,
        }),
    ];

    private static Scene FurnaceScene()
    {
        var scenes = new RandomScenes(new Cell(1, 0.8));
        for (var leaf = 0; leaf < 40; leaf++)
        {
            double Value(string purpose) => SeededValue.Uniform(11, purpose, leaf);
            var (midrib, sideways) = RandomScenes.Frame(Value("height"), Value("azimuth"), Value("turn"));
            var center = new Vector3((float)Value("x"), (float)(0.8 * Value("y")), (float)(0.8 + (0.6 * Value("z"))));
            scenes.AddFoldedBlade(center, midrib, sideways, 0.15f, 0.4f);
        }

        scenes.AddBox(SurfaceKind.Wood, new Vector3(0.48f, 0.3f, 0.02f), new Vector3(0.05f, 0.05f, 0.6f));
        scenes.AddBox(SurfaceKind.Cluster, new Vector3(0.6f, 0.3f, 0.3f), new Vector3(0.1f, 0.1f, 0.15f));
        return scenes.Build();
    }
}
