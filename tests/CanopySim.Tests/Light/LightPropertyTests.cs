using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>Small scenes of any leaves, slopes, optics and light, coarsely sampled: what must hold however coarse the sampling is.</summary>
public class LightPropertyTests
{
    private static readonly Vector3[] Directions = SkyRings.Spiral(40);

    private static readonly LightQuality Coarse = LightCases.Quality(0.03, 0.03, 1e-7);

    private static readonly Gen<(int Leaves, ulong Seed, Cell Cell, float Size, bool Wood)> AnyHedge =
        Gen.Select(Gen.Int[0, 30], Gen.ULong, Gen.Double[0.5, 1.2], Gen.Double[0.4, 1], Gen.Double[-0.4, 0.4].Array[2], Gen.Float[0.05f, 0.2f], Gen.Bool)
            .Select((leaves, seed, across, along, rise, size, wood) => (leaves, seed, new Cell(across, along, rise[0], rise[1]), size, wood));

    private static readonly Gen<double> AnyShare = Gen.Frequency((2, Gen.Double[0, 1]), (1, Gen.OneOf(Gen.Const(0.0), Gen.Const(1.0))));

    // Blades that reflect and let through anything from nothing to all; a third of them all or nothing.
    private static readonly Gen<Optics> AnyOptics =
        Gen.Select(AnyShare, AnyShare, AnyShare, AnyShare).Select((scattered, reflected, wood, ground) =>
            LightCases.Uniform(scattered * reflected, scattered * (1 - reflected), wood, ground));

    // Light under a milliwatt is none: the scattering works in single precision, in which a millionth of a millionth of it vanishes.
    private static readonly Gen<IncidentLight> AnyLight =
        Gen.Select(Gen.Double[0, 80], Gen.Double[0, 360], Irradiance(500), Irradiance(300), Gen.Bool, Gen.Double[0.01, 5].Array[40])
            .Select((zenith, azimuth, direct, diffuse, uniform, radiance) => new IncidentLight
            {
                SunDirection = SkyRings.Direction(zenith, azimuth),
                DirectNormalPar = direct,
                DirectNormalNir = direct / 2,
                DiffuseHorizontalPar = diffuse,
                DiffuseHorizontalNir = diffuse / 3,
                SkyRadiance = uniform ? null : radiance,
            });

    [Fact]
    public void Energy_closes_and_nothing_is_negative() =>
        Gen.Select(AnyHedge, AnyOptics, AnyLight).Sample((hedge, optics, incident) =>
        {
            var scene = Hedge(hedge.Leaves, hedge);
            var light = LightGeometry.Build(scene, Directions, Coarse, 1).Solve([incident], optics, 1);
            foreach (var budget in new[] { light.ParBudgets[0], light.NirBudgets[0] })
            {
                Assert.InRange(budget.Closure, 0, 1e-5);
                Assert.True(budget is { AbsorbedLeaves: >= 0, AbsorbedWood: >= 0, AbsorbedClusters: >= 0, AbsorbedGround: >= 0, Reflected: >= 0 }, $"{budget}");
            }

            var areas = scene.SurfaceAreas();
            for (var surface = 0; surface < scene.SurfaceCount; surface++)
            {
                Assert.True(light.AbsorbedPar[surface] >= 0 && light.AbsorbedNir[surface] >= 0);
                Assert.InRange(light.AbsorbedParDirect[surface], 0, (light.AbsorbedPar[surface] * (1 + 1e-5)) + 1e-12);
                Assert.InRange(light.SunlitShare[surface] * areas[surface], 0, areas[surface]);
                Assert.InRange(light.SunlitShare[surface], 0, 1);
            }

            Assert.InRange(light.GroundSunlitFraction[0], 0, 1);
            Assert.InRange(light.SkyGapFraction, 0, 1);
        }, iter: 400);

    /// <summary>White furnace: what absorbs nothing sends all back, whatever it is and whatever comes.</summary>
    [Fact]
    public void Where_nothing_absorbs_all_comes_back() =>
        Gen.Select(AnyHedge, Gen.Double[0, 1], AnyLight).Sample((hedge, reflected, incident) =>
        {
            // Leaves stuck in wood look into it, and what is in there counts as absorbed: here there is none.
            var scene = Hedge(hedge.Leaves, hedge with { Wood = false });
            var light = LightGeometry.Build(scene, Directions, Coarse, 1).Solve([incident], LightCases.Uniform(reflected, 1 - reflected, 1, 1), 1);
            var budget = light.ParBudgets[0];
            Assert.Equal(budget.Incident, budget.Reflected, 1e-4 * budget.Incident);
            Assert.Equal(0, budget.AbsorbedLeaves + budget.AbsorbedGround, 1e-6 * budget.Incident);
        }, iter: 200);

    /// <summary>These two shares make 1, and a little more in single precision: the blades once kept −4e-8 of the light.</summary>
    [Fact]
    public void Blades_that_keep_nothing_do_not_give()
    {
        const double Reflected = 0.6103620332756661;
        var light = LightGeometry.Build(RandomScenes.Hedge(14, 63, new Cell(0.52, 0.7), wood: false), Directions, Coarse, 1)
            .Solve([LightCases.UniformSky(100)], LightCases.Uniform(Reflected, 1 - Reflected, 0, 0), 1);
        Assert.InRange(light.ParBudgets[0].AbsorbedLeaves, 0, 1e-5);
    }

    /// <summary>Twelve strips of bare ground once made 1.0000000000000002 of it.</summary>
    [Theory]
    [InlineData(0, 0.01, 1e-4)]
    [InlineData(-0.01, 0.01, 1e-4)]
    [InlineData(0.01, double.NaN, 1e-4)]
    [InlineData(double.PositiveInfinity, 0.01, 1e-4)]
    [InlineData(0.01, 0.01, 0)]
    public void Pixels_and_tolerance_that_make_no_sense_are_refused(double skyPixel, double sunPixel, double tolerance) =>
        Assert.Throws<ArgumentException>(() =>
            LightGeometry.Build(new RandomScenes(new Cell(1, 1)).Build(), SkyRings.Spiral(4), LightCases.Quality(skyPixel, sunPixel, tolerance), 1));

    [Fact]
    public void Bare_ground_is_wholly_sunlit()
    {
        var scene = new RandomScenes(new Cell(1, 0.5384615384615384, -0.04285714285714286, -0.021505376344086023)).Build();
        var light = LightGeometry.Build(scene, Directions, Coarse, 1).Solve([LightCases.Sun(new Vector3(0.9721454f, 0.033948064f, 0.231907f))], LightCases.Black, 1);
        Assert.Equal(1, light.GroundSunlitFraction[0]);
    }

    /// <summary>Black blades: those that are added only take from what the ground had, on every line of light. (Blades that scatter may send it more.)</summary>
    [Fact]
    public void More_leaf_never_raises_the_light_of_the_ground() =>
        Gen.Select(AnyHedge, AnyLight, Gen.Int[1, 30]).Sample((hedge, incident, more) =>
        {
            var few = LightGeometry.Build(Hedge(hedge.Leaves, hedge), Directions, Coarse, 1);
            var many = LightGeometry.Build(Hedge(hedge.Leaves + more, hedge), Directions, Coarse, 1);
            var before = few.Solve([incident], LightCases.Black, 1);
            var after = many.Solve([incident], LightCases.Black, 1);
            Assert.True(many.SkyGapFraction <= few.SkyGapFraction);
            Assert.True(after.GroundSunlitFraction[0] <= before.GroundSunlitFraction[0] + 1e-12);
            var least = 1e-6 * before.ParBudgets[0].Incident;
            Assert.True(after.ParBudgets[0].AbsorbedGround <= before.ParBudgets[0].AbsorbedGround + least);
            Assert.True(after.ParBudgets[0].AbsorbedLeaves >= before.ParBudgets[0].AbsorbedLeaves - least);
        }, iter: 200);

    /// <summary>Reciprocity: what one face sends another along the lines of light, the other sends it back.</summary>
    [Fact]
    public void Two_faces_see_each_other_equally_often() =>
        AnyHedge.Sample(hedge =>
        {
            var geometry = LightGeometry.Build(Hedge(hedge.Leaves, hedge), Directions, Coarse, 1);
            var (matrix, nodes) = (geometry.Matrix, geometry.Nodes);
            var counts = new Dictionary<(int Node, int Sender), double>();
            for (var node = 0; node < nodes.Count; node++)
                for (var at = matrix.Starts[node]; at < matrix.Starts[node + 1]; at++)
                    counts[(node, matrix.Senders[at])] = matrix.Counts[at];
            Assert.Equal(hedge.Leaves > 0 || hedge.Wood, counts.Count > 0);
            foreach (var ((node, sender), count) in counts)
                if (!nodes.IsInside(node)) Assert.Equal(count, counts[(sender, node)]);
        }, iter: 100);

    private static Gen<double> Irradiance(double most) => Gen.Double[0, most].Select(value => value < 1e-3 ? 0 : value);

    // The first leaves are the same for any number of them: what is added, is added.
    private static Scene Hedge(int leaves, (int Leaves, ulong Seed, Cell Cell, float Size, bool Wood) hedge) =>
        RandomScenes.Hedge(leaves, hedge.Seed, hedge.Cell, hedgeWidth: 0.8f, leafSize: hedge.Size, wood: hedge.Wood);
}
