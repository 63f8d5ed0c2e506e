using System.Numerics;
using System.Reflection;
using CanopySim.Assessment;
using CanopySim.Geometry;
using CanopySim.Parameters;
using CanopySim.Plants;
using CanopySim.Results;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Assessment;

public class CanopySheetTests
{
    [Fact]
    public void Both_ends_of_a_range_lie_within()
    {
        var range = PublishedRange.ShootsPerMeter;
        Assert.Equal(SheetVerdict.Below, range.Judge(Math.BitDecrement(10)));
        Assert.Equal(SheetVerdict.Within, range.Judge(10));
        Assert.Equal(SheetVerdict.Within, range.Judge(20));
        Assert.Equal(SheetVerdict.Above, range.Judge(Math.BitIncrement(20)));
        Assert.Equal(SheetVerdict.Within, (range with { Low = null }).Judge(-5));
        Assert.Equal(SheetVerdict.Within, (range with { High = null }).Judge(1e9));
    }

    [Fact]
    public void Every_range_has_a_source_and_is_a_range()
    {
        var ranges = Ranges().ToList();
        Assert.True(ranges.Count >= 18, $"{ranges.Count} ranges");
        Assert.All(ranges, range => Assert.False(string.IsNullOrWhiteSpace(range.Source)));
        Assert.All(ranges, range => Assert.True(range.Low < range.High));
        Assert.All(ranges, range => Assert.True(range.Mark is Mark.Published or Mark.Recalled or Mark.Derived));
        Assert.All(ranges.Where(range => range.Mark == Mark.Recalled), range =>
            Assert.Contains("from memory", range.Source));
    }

    // Kliewer & Dokoozlian 2005, AJEV 56:170-181: single and divided canopies.
    [Theory]
    [InlineData(1, 0.8, 1.2, 2, 5, 3, 7, 4, 0.5, 1)]
    [InlineData(2, 0.5, 0.8, 2, 4, 3, 6, 5, 0.4, 0.8)]
    public void Ranges_are_those_of_the_canopy(
        int walls, double fruitLow, double fruitHigh, double leafLow, double leafHigh, double denseLow,
        double denseHigh, double yieldLow, double canesLow, double canesHigh)
    {
        var rows = CanopySheet.Rows(Survey(walls), new HarvestSummary(4, 10, 22, 1, 1.2, 4), 1.5);
        AssertRange("leaf_area_per_fruit", fruitLow, fruitHigh);
        AssertRange("leaf_area", leafLow, leafHigh);
        AssertRange("leaf_area_density", denseLow, denseHigh);
        AssertRange("yield_to_prunings", yieldLow, 10);
        AssertRange("prunings", canesLow, canesHigh);

        // Prunings of a vine lie on as many meters of canopy as there are walls.
        Assert.Equal(1.2 / 1.5 / walls, rows.Single(row => row.Item == "prunings").Value!.Value, 1e-12);
        Assert.Equal(walls == 1 ? 1 : 3, rows.Count(row => row.Item == "gaps"));

        void AssertRange(string item, double low, double high)
        {
            var row = rows.Single(row => row.Item == item);
            Assert.Equal((low, high), (row.Low!.Value, row.High!.Value));
        }
    }

    [Fact]
    public void Rows_say_what_is_not_seen_and_what_was_not_reached()
    {
        Assert.Empty(CanopySheet.Rows(null, null, 1.5));
        var rows = CanopySheet.Rows(Survey(1), null, 1.5);
        Assert.Equal(["leaf_color", "leaf_health"],
            rows.Where(row => row.Verdict == SheetVerdict.JudgeInRow).Select(row => row.Item));
        Assert.Equal(SheetVerdict.NotReached, rows.Single(row => row.Item == "prunings").Verdict);
        Assert.All(rows, row => Assert.False(string.IsNullOrWhiteSpace(row.Source)));
        Assert.All(rows, row => Assert.False(string.IsNullOrWhiteSpace(row.Meaning)));
        Assert.All(rows.Where(row => row.Item is "gaps" or "leaf_layers" or "interior_leaves"), row =>
            Assert.NotNull(row.SamplingError));
        Assert.Equal(1,
            rows.Single(row => row.Item == "interior_leaves").Value
            + rows.Single(row => row.Item == "exterior_leaves").Value);
    }

    // Levels of the card from memory: Smart & Robinson 1991.
    [Fact]
    public void Points_follow_the_card()
    {
        Assert.Equal([0, 4, 6, 10, 8], new double[] { 10, 20, 30, 40, 50 }.Select(CanopyScore.Gaps));
        Assert.Equal([10, 8, 4, 2], new double[] { 1, 1.5, 2, 2.1 }.Select(CanopyScore.Layers));
        Assert.Equal([10, 8, 6, 4, 2], new double[] { 60, 50, 40, 30, 20 }.Select(CanopyScore.Exposure));
        Assert.Equal([2, 6, 10, 10, 6, 2], new double[] { 7.9, 8, 10, 20, 25, 25.1 }.Select(CanopyScore.ShootNodes));
        Assert.Equal([10, 8, 6, 4, 2, 0], new double[] { 5, 10, 20, 30, 40, 50 }.Select(CanopyScore.Tips));
        var score = CanopyScore.Of(Survey(1));
        Assert.Equal(score.Items.Sum(item => item.Points), score.Points);
        Assert.Equal(10 * score.Items.Count, score.MostPoints);
        Assert.DoesNotContain(score.Items, item => item.Item is "leaf_size" or "leaf_color");
    }

    // Blades spread evenly through a wall of 1.2 m by 0.4 m, leaning by 0.2: the span that leaves 2.5 % out at either
    // end is 95 % of it.
    [Theory]
    [InlineData(0)]
    [InlineData(0.2)]
    [InlineData(Math.PI)]
    public void A_box_holds_the_foliage(double tilt)
    {
        var scenario = GrownCanopy.Scenario();
        var wall = new FoliageWall(0, 0.3, 1, tilt, 0.4);
        var (sin, cos) = ((float)Math.Sin(tilt), (float)Math.Cos(tilt));
        var shoot = new Shoot(new ShootId(0), new VineId(0), 1, 0, 1);
        var leaf = new Leaf(new LeafId(0), shoot, 1, 0.01);
        var list = new TriangleList();
        list.Begin(SurfaceKind.Blade, 0);
        for (var up = 0; up < 120; up++)
        {
            for (var across = 0; across < 40; across++)
            {
                var (v, u) = ((up + 0.5f) / 100, ((across + 0.5f) / 100) - 0.2f);
                var at = new Vector3(0.3f + (sin * v) + (cos * u), 0.5f, 1 + (cos * v) - (sin * u));
                list.Add(at - new Vector3(0, 0.01f, 0), at + new Vector3(0, 0.01f, 0), at + (0.003f * Vector3.UnitZ));
            }
        }

        var scene = list.Build(CanopyScene.CellOf(scenario));
        var box = WallBox.Of(new PlacedCanopy(scene, [leaf], [default], [scene.SurfaceAreas()[0]]), new RowOfWalls(0, 0, [wall]), wall);
        Assert.Equal(0.95 * 1.2, box.Extent, 0.025);
        Assert.Equal(0.95 * 0.4, box.Thickness, 0.025);
        Assert.Equal(box.Extent * box.Thickness * 1.5, box.Volume, 1e-12);
        Assert.Equal(scene.SurfaceAreas()[0], box.LeafArea, 1e-6);
    }

    private static CanopySurvey Survey(int walls)
    {
        var grown = new GrownCanopy(GrownCanopy.Scenario()).Grow(60).Set();
        var scenario = GrownCanopy.Scenario();
        var survey =
            CanopySurvey.Of(scenario, grown.Canopy,
            new CanopyScene(scenario).Place(grown.Canopy, SceneDetail.ForLight));
        return walls == 1 ? survey : survey with
        {
            Walls = [.. survey.Walls, survey.Walls[0] with { Index = 1 }],
            Quadrats = [.. survey.Quadrats, .. survey.Quadrats],
            Boxes = [.. survey.Boxes, .. survey.Boxes],
        };
    }

    private static IEnumerable<PublishedRange> Ranges()
    {
        var type = typeof(PublishedRange);
        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Static))
            yield return (PublishedRange)property.GetValue(null)!;
        foreach (var method in type.GetMethods(BindingFlags.Public | BindingFlags.Static).Where(method => method.ReturnType == type && !method.IsSpecialName))
        {
            yield return (PublishedRange)method.Invoke(null, [false])!;
            yield return (PublishedRange)method.Invoke(null, [true])!;
        }
    }
}
