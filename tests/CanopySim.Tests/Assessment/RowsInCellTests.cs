using CanopySim.Assessment;
using CanopySim.Fruit;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Tests.Light;
using CanopySim.Tests.Plants;
using CanopySim.Tests.Seasons;
using CanopySim.Training;
using CanopySim.Views;
using Xunit;

namespace CanopySim.Tests.Assessment;

/// <summary>
/// Several rows in a cell: the same plants in each are assessed as one row by itself, on the flat and across a slope.
/// </summary>
public class RowsInCellTests
{
    public static TheoryData<TrellisForm, double> Blocks => new()
    {
        { TrellisForm.UprightHedge, 0 },
        { TrellisForm.HighWire, 15 },
        { TrellisForm.TwinCurtain, 15 },
        { TrellisForm.SlantedV, 0 },
        { TrellisForm.UpAndDown, 0 },
        { TrellisForm.Overhead, 15 },
        { TrellisForm.Bush, 0 },
    };

    // Rods of the first row stand where they do when it is alone; those of the second elsewhere, but along the same
    // foliage.
    [Theory]
    [MemberData(nameof(Blocks))]
    public void Rods_through_either_row_meet_one_canopy(TrellisForm form, double slope)
    {
        const int Seeds = 8;
        var row = new CopiedRow(form, slope);
        var (one, two) = (TrellisLayout.RowsOf(row.Single), TrellisLayout.RowsOf(row.Double));
        var readings = Enumerable.Range(1, Seeds).Select(seed => PointQuadrat.ReadRows(row.Two.Scene, two, (ulong)seed))
            .ToList();
        var alone = PointQuadrat.ReadRows(row.One.Scene, one, 1)[0];
        for (var wall = 0; wall < alone.Count; wall++)
        {
            var first = readings[0][0][wall].Insertions;
            Assert.True(first.Count >= 100);
            Assert.Equal(alone[wall].Insertions.Take(first.Count), first);
            var (left, right) = (
                QuadratReading.Together(readings.Select(rows => rows[0][wall])),
                QuadratReading.Together(readings.Select(rows => rows[1][wall])));
            Assert.NotEqual(left.Insertions, right.Insertions);
            Alike(left.LeafLayers, right.LeafLayers);
            Alike(left.Gaps, right.Gaps);
            Alike(left.InteriorLeaves, right.InteriorLeaves);
            Assert.True(left.LeafLayerNumber > 0.3);
        }
    }

    [Theory]
    [MemberData(nameof(Blocks))]
    public void The_survey_and_the_clusters_are_those_of_one_row(TrellisForm form, double slope)
    {
        var row = new CopiedRow(form, slope);
        var one = CanopySurvey.Of(row.Single, row.Grown.Canopy, row.One);
        var two = CanopySurvey.Of(row.Double, row.Grown.Canopy, row.Two);
        Assert.Equal(one.Walls.Count, two.Quadrats.Count);
        Assert.Equal(2 * one.Boxes.Count, two.Boxes.Count);
        for (var box = 0; box < two.Boxes.Count; box++)
        {
            var alone = one.Boxes[box % one.Boxes.Count];
            Assert.Equal(alone.Extent, two.Boxes[box].Extent, 1e-5);
            Assert.Equal(alone.Thickness, two.Boxes[box].Thickness, 1e-5);
            Assert.Equal(alone.LeafArea, two.Boxes[box].LeafArea, 1e-5);
        }

        Assert.Equal(Assert.NotNull(one.LeafAreaDensity), Assert.NotNull(two.LeafAreaDensity), 1e-4);

        var (alike, twice) = (ClustersOf(row.Single, row.One), ClustersOf(row.Double, row.Two));
        Assert.Equal(alike.Sides, twice.Sides);
        Assert.Equal(alike.CountOfSide.Select(count => 2 * count), twice.CountOfSide);
        for (var side = 0; side < alike.Sides.Count; side++)
            Assert.Equal(2 * alike.AreaOfSide[side], twice.AreaOfSide[side], 1e-5);

        Assert.Equal(HalfWidthOf(row, row.One), HalfWidthOf(row, row.Two), 1e-5);
    }

    // From the side the first row alone is seen, as if no other stood behind or before it.
    [Fact]
    public void From_the_side_one_row_is_seen()
    {
        const double Pixel = 0.02;
        var row = new CopiedRow(TrellisForm.UprightHedge);
        var (one, two) =
            (CanopyView.Of(row.One.Scene, ViewSide.Front, Pixel), CanopyView.Of(row.Two.Scene, ViewSide.Front, Pixel));
        var (leaves, gaps) = (0, 0);
        for (var right = 0.5 * Pixel; right < 1.5; right += Pixel)
        {
            for (var up = 0.5 * Pixel; up < 2.2; up += Pixel)
            {
                var surface = one.SurfaceAt(right, up, out _);
                Assert.Equal(surface, two.SurfaceAt(right, up, out _));
                if (surface < 0) gaps++;
                else leaves++;
            }
        }

        Assert.True(leaves > 500 && gaps > 500);
    }

    // How far two rows may be apart in light on fruit, as a share of its mean over the sides.
    private const double MostApart = 0.025;

    // The sun from the right and from the left, with sky. Pixels of both cells are as large but fall elsewhere: of the
    // sky's few see the clusters of a dense hedge. Seen were 1.6 % there, 0.2 % in the curtains.
    [Theory]
    [InlineData(TrellisForm.UprightHedge)]
    [InlineData(TrellisForm.TwinCurtain)]
    public void Light_on_fruit_is_that_of_one_row(TrellisForm form)
    {
        var row = new CopiedRow(form);
        var (one, two) = (FruitOf(row, row.Single, row.One), FruitOf(row, row.Double, row.Two));
        var sides = Enumerable.Range(0, one.Clusters.Sides.Count).ToList();
        foreach (var hour in Hours)
        {
            var mean = sides.Average(side => one.At(side, hour).Ppfd);
            // Deep in a dense hedge, and yet lit.
            Assert.True(mean > 5, $"{mean}");
            foreach (var side in sides)
            {
                var (alone, beside) = (one.At(side, hour), two.At(side, hour));
                Assert.Equal(alone.Ppfd, beside.Ppfd, MostApart * mean);
                Assert.Equal(alone.SunlitShare, beside.SunlitShare, 0.002);
                Assert.Equal(alone.SurfaceTemperature, beside.SurfaceTemperature, 0.2);
            }

            // Sides differ by far more.
            Assert.True(sides.Max(side => one.At(side, hour).Ppfd) > 1.1 * sides.Min(side => one.At(side, hour).Ppfd));
        }
    }

    // Each row with vines of its own: two rows in a cell against as many cells of one row.
    [Fact]
    public void Rows_with_vines_of_their_own_are_one_canopy_in_the_mean()
    {
        var one = Enumerable.Range(1, 20).Select(seed => SurveyOf(1, seed)).ToList();
        var two = Enumerable.Range(101, 10).Select(seed => SurveyOf(2, seed)).ToList();
        foreach (var of in new Func<CanopySurvey, double>[]
        {
            survey => survey.Canopy.LeafLayerNumber, survey => survey.Canopy.GapFraction, survey =>
                survey.LeafAreaDensity ?? 0,
            survey => survey.Canopy.ShootsPerM, survey => survey.Canopy.LeafAreaM2PerM, survey =>
                survey.LateralNodesPerShoot,
        })
        {
            Alike(MeanOf([.. one.Select(of)]), MeanOf([.. two.Select(of)]));
        }
    }

    private static readonly int[] Hours = [9, 15];

    private static FruitHours FruitOf(CopiedRow row, Scenario scenario, PlacedCanopy placed)
    {
        IncidentLight[] lights =
        [
            .. new[] { 90.0, 270.0 }.Select(azimuth => LightCases.UniformSky(80) with
            {
                SunDirection = SkyRings.Direction(50, azimuth), DirectNormalPar = 300, DirectNormalNir = 300,
            }),
        ];
        var solution = LightGeometry.Build(placed.Scene, SkyRings.Spiral(60), LightCases.Quality(0.006, 0.004), 2)
            .Solve(lights, scenario.Optics, 2);
        var weather =
            SeasonCases.Northern(SeasonCases.FirstSeason).Days.First(day => day.Date == new DateOnly(2025, 7, 12));
        var radius =
            FruitHours.BerryRadius(row.Grown.Canopy.Vines[0].Crop, scenario.Fruit, new BerryGrowth(scenario.Fruit));
        return FruitHours.Read(ClustersOf(scenario, placed), new LightOfDay(placed, Hours, lights, solution, 1),
            weather, scenario, radius);
    }

    private static CanopySurvey SurveyOf(int rows, int seed)
    {
        var block = GrownCanopy.Scenario();
        var scenario = block with { Seed = (ulong)seed, Rows = block.Rows with { RowsInCell = rows } };
        var grown = new GrownCanopy(scenario).Grow(45).Set();
        return CanopySurvey.Of(scenario, grown.Canopy,
            new CanopyScene(scenario).Place(grown.Canopy, SceneDetail.ForLight));
    }

    private static FruitClusters ClustersOf(Scenario scenario, PlacedCanopy placed) =>
        FruitClusters.Of(placed.Scene, TrellisLayout.RowsOf(scenario), scenario.Rows.Azimuth);

    private static double HalfWidthOf(CopiedRow row, PlacedCanopy placed) =>
        CanopyPortrait.Of(placed, row.Grown.Canopy, new CanopyScene(row.Single), new DateOnly(2025, 8, 1), true)
            .Extent.HalfWidth;

    private static Sampled MeanOf(double[] values)
    {
        var mean = values.Average();
        return new Sampled(mean,
            Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1) / values.Length));
    }

    private static void Alike(Sampled one, Sampled other)
    {
        var error = Math.Sqrt((one.Error * one.Error) + (other.Error * other.Error));
        Assert.True(Math.Abs(one.Value - other.Value) <= (4 * error) + 1e-9, $"{one} and {other}");
    }
}
