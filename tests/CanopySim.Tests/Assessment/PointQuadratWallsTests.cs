using System.Numerics;
using CanopySim.Assessment;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Assessment;

/// <summary>Rows of two walls, made by hand: each is read by itself.</summary>
public class PointQuadratWallsTests
{
    private const float Side = 0.08f;
    private static readonly Cell Row = new(3, 1.5);

    public static TheoryData<string> Forms => ["curtains", "upright", "leaning", "roofs"];

    // Gaps = exp(−leaf layers) for leaves thrown at random, in each of two walls with other numbers of leaves; forty
    // rows.
    [Theory]
    [MemberData(nameof(Forms))]
    public void Each_wall_has_its_own_exponential_gap(string form)
    {
        const int Rows = 40;

        // Roofs touch each other, and a leaf at the seam lies over both: there both have the same number.
        double[] layers = form == "roofs" ? [1, 1] : [0.5, 1.5];
        var walls = Walls(form);
        var readings = Enumerable.Range(1, Rows)
            .Select(seed => PointQuadrat.ReadWalls(Thrown(walls, layers, (ulong)seed), walls, (ulong)seed)).ToList();
        for (var wall = 0; wall < 2; wall++)
        {
            var number = wall;
            Near(Math.Exp(-layers[wall]), [.. readings.Select(row => row[number].GapFraction)]);
            Near(layers[wall], [.. readings.Select(row => row[number].LeafLayerNumber)]);
            Assert.All(readings, row => Assert.True(row[number].Insertions.Count >= 100));
        }
    }

    // The standard error that one reading tells is the spread that many show; of 60 rows it is known to 9 % (4 standard
    // errors: 37 %).
    [Fact]
    public void The_sampling_error_is_the_spread_of_readings()
    {
        const int Rows = 60;
        var walls = Walls("upright");
        var scene = Thrown(walls, [1, 1], 7);
        var readings = Enumerable.Range(1, Rows).Select(seed => PointQuadrat.ReadWalls(scene, walls, (ulong)seed)[0])
            .ToList();
        foreach (var of in new Func<QuadratReading, Sampled>[] { reading => reading.LeafLayers, reading => reading.Gaps, reading => reading.InteriorLeaves })
        {
            var values = readings.Select(reading => of(reading).Value).ToList();
            var mean = values.Average();
            var spread = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (Rows - 1));
            Assert.InRange(readings.Average(reading => of(reading).Error) / spread, 0.63, 1.37);
        }
    }

    // A sheet of leaf on one side, clusters between leaves on the other: neither wall's rods meet the other's.
    [Theory]
    [InlineData("curtains")]
    [InlineData("upright")]
    [InlineData("leaning")]
    public void No_rod_meets_the_other_wall(string form)
    {
        var walls = Walls(form);
        var list = new TriangleList();
        Sheet(list, walls[0], SurfaceKind.Blade, 0);
        foreach (var (kind, offset) in new[] { (SurfaceKind.Blade, -0.1f), (SurfaceKind.Cluster, 0f), (SurfaceKind.Blade, 0.1f) })
            Sheet(list, walls[1], kind, offset);
        var readings = PointQuadrat.ReadWalls(list.Build(Row), walls, 3);
        Assert.All(readings[0].Insertions, rod => Assert.Equal([SurfaceKind.Blade], rod));
        Assert.All(readings[1].Insertions, rod =>
            Assert.Equal([SurfaceKind.Blade, SurfaceKind.Cluster, SurfaceKind.Blade], rod));
        Assert.Null(readings[0].InteriorClusters);
        Assert.Equal(1, readings[1].InteriorClusters!.Value.Value);

        // Taken together every insertion counts alike.
        var together = QuadratReading.Together(readings);
        Assert.Equal(1.5, together.LeafLayerNumber, 1e-12);

        // Parts of the zone hold each rod once.
        QuadratReading[] parts = [together.Between(0, 0.3), together.Between(0.3, 1)];
        Assert.Equal(together.Insertions.Count, parts.Sum(part => part.Insertions.Count));
        Assert.InRange(parts[0].Insertions.Count / (double)together.Insertions.Count, 0.2, 0.4);
        Assert.Equal(1.5 * together.Insertions.Count, parts.Sum(part => part.LeafLayerNumber * part.Insertions.Count), 1e-6);
    }

    [Fact]
    public void A_flat_roof_is_probed_from_below()
    {
        var walls = Walls("roofs");
        var list = new TriangleList();

        // Clusters under leaves under leaves, over the left roof alone.
        foreach (var (kind, height) in new[] { (SurfaceKind.Cluster, 1.7f), (SurfaceKind.Blade, 2f), (SurfaceKind.Blade, 2.1f) })
        {
            list.Begin(kind);
            Quad(list, new Vector3(-1.5f, 0, height), new Vector3(1.5f, 0, 0), new Vector3(0, 1.5f, 0));
        }

        var readings = PointQuadrat.ReadWalls(list.Build(Row), walls, 3);
        Assert.All(readings[0].Insertions, rod =>
            Assert.Equal([SurfaceKind.Cluster, SurfaceKind.Blade, SurfaceKind.Blade], rod));
        Assert.Equal(1, readings[1].GapFraction);
    }

    [Fact]
    public void The_seed_decides_where_the_rods_go()
    {
        var walls = Walls("upright");
        var scene = Thrown(walls, [1, 1], 7);
        Assert.Equal(PointQuadrat.ReadWalls(scene, walls, 1)[0].Insertions,
            PointQuadrat.ReadWalls(scene, walls, 1)[0].Insertions);
        Assert.NotEqual(PointQuadrat.ReadWalls(scene, walls, 1)[0].Insertions,
            PointQuadrat.ReadWalls(scene, walls, 2)[0].Insertions);
        Assert.NotEqual(PointQuadrat.ReadWalls(scene, walls, 1)[0].Insertions,
            PointQuadrat.ReadWalls(scene, walls, 1)[1].Insertions);
    }

    private static FoliageWall[] Walls(string form) => form switch
    {
        "curtains" => [new(0, -0.6, 1.7, Math.PI, 0.4), new(1, 0.6, 1.7, Math.PI, 0.4)],
        "upright" => [new(0, -0.5, 0.9, 0, 0.35), new(1, 0.5, 0.9, 0, 0.35)],
        "leaning" => [new(0, -0.45, 0.9, -0.3, 0.35), new(1, 0.45, 0.9, 0.3, 0.35)],
        _ => [new(0, -0.75, 2, -0.5 * Math.PI, 1.4), new(1, 0.75, 2, 0.5 * Math.PI, 1.4)],
    };

    // Squares in the planes of each wall, turned at random, up to 0.1 m to either side of its middle, and wider than
    // its fruit zone.
    private static Scene Thrown(FoliageWall[] walls, double[] layers, ulong seed)
    {
        var list = new TriangleList();
        foreach (var wall in walls)
        {
            var (along, square, middle) = Axes(wall);
            var extent = wall.IsFlat ? 1.5 : 1.4;
            var leaves = (int)Math.Round(layers[wall.Index] * Row.Along * extent / (Side * Side));
            for (var leaf = 0; leaf < leaves; leaf++)
            {
                double Value(string purpose) => SeededValue.Uniform(seed, purpose, leaf, wall.Index);
                var (sin, cos) = MathF.SinCos((float)(2 * Math.PI * Value("turn")));
                var center = middle + ((float)(extent * (Value("up") - 0.5)) * along)
                    + ((float)(0.2 * (Value("depth") - 0.5)) * square)
                    + ((float)(Row.Along * Value("y")) * Vector3.UnitY);
                var a = Side * ((cos * Vector3.UnitY) + (sin * along));
                var b = Side * ((cos * along) - (sin * Vector3.UnitY));
                list.Begin(SurfaceKind.Blade, leaf);
                Quad(list, center - (0.5f * (a + b)), a, b);
            }
        }

        return list.Build(Row);
    }

    private static void Sheet(TriangleList list, FoliageWall wall, SurfaceKind kind, float offset)
    {
        var (along, square, middle) = Axes(wall);
        list.Begin(kind);
        Quad(list, middle - (0.7f * along) + (offset * square), 1.5f * Vector3.UnitY, 1.4f * along);
    }

    // Along the foliage, square to it, and the middle of the fruit zone (of a roof, of the roof).
    private static (Vector3 Along, Vector3 Square, Vector3 Middle) Axes(FoliageWall wall)
    {
        var (sin, cos) = ((float)Math.Sin(wall.Tilt), (float)Math.Cos(wall.Tilt));
        var middle = wall.IsFlat
            ? new Vector3((float)wall.CordonAcross, 0, (float)wall.CordonHeight)
            : new Vector3((float)wall.FruitZone.Across(0.5), 0, (float)wall.FruitZone.Height(0.5));
        return (new Vector3(sin, 0, cos), new Vector3(cos, 0, -sin), middle);
    }

    private static void Near(double expected, List<double> values)
    {
        var mean = values.Average();
        var error = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1) / values.Count);
        Assert.True(Math.Abs(mean - expected) < 4 * error, $"{mean} ± {error}, expected {expected}");
    }

    private static void Quad(TriangleList list, Vector3 corner, Vector3 a, Vector3 b)
    {
        list.Add(corner, corner + a, corner + a + b);
        list.Add(corner, corner + a + b, corner + b);
    }
}
