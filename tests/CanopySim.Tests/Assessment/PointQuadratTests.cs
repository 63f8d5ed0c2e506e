using System.Numerics;
using CanopySim.Assessment;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Assessment;

public class PointQuadratTests
{
    private const float Side = 0.08f;

    /// <summary>
    /// Leaves thrown at random over a wall leave gaps of exp(−leaf layers); the published pairs (1.0 to 1.5 layers, 20
    /// to 40 % gaps: Smart &amp; Robinson 1991, from memory) lie on that curve. Forty walls, each read by its own rods.
    /// </summary>
    [Theory]
    [InlineData(0.5, TrellisForm.UprightHedge)]
    [InlineData(1.0, TrellisForm.UprightHedge)]
    [InlineData(1.5, TrellisForm.UprightHedge)]
    [InlineData(3.0, TrellisForm.UprightHedge)]
    [InlineData(1.5, TrellisForm.HangingCurtain)]
    [InlineData(1.5, TrellisForm.Overhead)]
    public void Random_leaves_leave_the_exponential_gap(double layers, TrellisForm form)
    {
        const int Walls = 40;
        var readings = Enumerable.Range(1, Walls).Select(wall =>
        {
            var scenario = GrownCanopy.Scenario(form) with { Seed = (ulong)wall };
            return PointQuadrat.Read(Thrown(scenario, layers), scenario);
        }).ToList();
        AssertMean(Math.Exp(-layers), readings.Select(reading => reading.GapFraction).ToList());
        AssertMean(layers, readings.Select(reading => reading.LeafLayerNumber).ToList());
    }

    /// <summary>One leaf layer is all exterior; wood does not count; nothing at all is a gap.</summary>
    [Fact]
    public void A_single_layer_is_exterior()
    {
        var scenario = GrownCanopy.Scenario();
        var list = new TriangleList();
        list.Begin(SurfaceKind.Blade, 0);
        AddQuad(list, new Vector3(0, -0.01f, 0), new Vector3(0, 1.52f, 0), new Vector3(0, 0, 3));
        list.Begin(SurfaceKind.Wood);
        AddQuad(list, new Vector3(0.1f, -0.01f, 0), new Vector3(0, 1.52f, 0), new Vector3(0, 0, 3));
        var reading = PointQuadrat.Read(list.Build(CanopyScene.CellOf(scenario)), scenario);
        Assert.Equal(0, reading.GapFraction);
        Assert.Equal(0, reading.InteriorLeafFraction);
        Assert.Null(reading.InteriorClusterFraction);

        var bare = PointQuadrat.Read(new TriangleList().Build(CanopyScene.CellOf(scenario)), scenario);
        Assert.Equal(1, bare.GapFraction);
        Assert.Equal(0, bare.LeafLayerNumber);
    }

    /// <summary>A cluster between two leaf walls is interior, and so is neither leaf.</summary>
    [Fact]
    public void A_cluster_between_leaves_is_interior()
    {
        var scenario = GrownCanopy.Scenario();
        var list = new TriangleList();
        foreach (var (kind, x) in new[] { (SurfaceKind.Blade, -0.1f), (SurfaceKind.Cluster, 0f), (SurfaceKind.Blade, 0.1f) })
        {
            list.Begin(kind);
            AddQuad(list, new Vector3(x, 0, 0), new Vector3(0, 1.5f, 0), new Vector3(0, 0, 3));
        }

        var reading = PointQuadrat.Read(list.Build(CanopyScene.CellOf(scenario)), scenario);
        Assert.Equal(2, reading.LeafLayerNumber, 0.03);
        Assert.Equal(0, reading.InteriorLeafFraction);
        Assert.Equal(1, reading.InteriorClusterFraction);
    }

    private static void AssertMean(double expected, List<double> values)
    {
        var mean = values.Average();
        var error = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1) / values.Count);
        Assert.True(Math.Abs(mean - expected) < 4 * error, $"{mean} ± {error}, expected {expected}");
    }

    // Squares of random turn about the rod, in a wall (or a roof) wider than the fruit zone, so that its edges are not
    // seen.
    private static Scene Thrown(Scenario scenario, double layers)
    {
        var cell = CanopyScene.CellOf(scenario);
        var flat = scenario.Trellis.Form == TrellisForm.Overhead;
        var width = flat ? cell.Across : 1.4;
        var leaves = (int)Math.Round(layers * cell.Along * width / (Side * Side));
        var list = new TriangleList();
        for (var leaf = 0; leaf < leaves; leaf++)
        {
            double Value(string purpose) => SeededValue.Uniform(scenario.Seed, purpose, leaf);
            var (sin, cos) = MathF.SinCos((float)(2 * Math.PI * Value("turn")));
            var along = (float)(cell.Along * Value("y"));
            var second = (float)(width * (Value("second") - 0.5));
            var depth = (float)(0.3 * Value("depth"));
            var cordon = (float)scenario.Trellis.CordonHeightOrDefault;
            var center = flat ? new Vector3(second, along, cordon + depth) : new Vector3(depth, along, cordon + second);
            var a = Side * (flat ? new Vector3(cos, sin, 0) : new Vector3(0, cos, sin));
            var b = Side * (flat ? new Vector3(-sin, cos, 0) : new Vector3(0, -sin, cos));
            list.Begin(SurfaceKind.Blade, leaf);
            AddQuad(list, center - (0.5f * (a + b)), a, b);
        }

        return list.Build(cell);
    }

    private static void AddQuad(TriangleList list, Vector3 corner, Vector3 a, Vector3 b)
    {
        list.Add(corner, corner + a, corner + a + b);
        list.Add(corner, corner + a + b, corner + b);
    }
}
