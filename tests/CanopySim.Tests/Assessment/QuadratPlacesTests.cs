using System.Numerics;
using CanopySim.Assessment;
using CanopySim.Geometry;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Assessment;

/// <summary>Where rods go: sheets of leaf that they must meet, each as often as it says.</summary>
public class QuadratPlacesTests
{
    private static readonly Cell Alley = new(2, 1.5);

    // Leaf beyond the middle of the alley: the rod meets the next rows' in its place, even from two rows away.
    [Theory]
    [InlineData(1.3)]
    [InlineData(2.6)]
    public void A_canopy_wider_than_its_alley_is_met_whole(double reach)
    {
        var list = new TriangleList();
        foreach (var side in new[] { -1, 1 })
        {
            list.Begin(SurfaceKind.Blade);
            Quad(list, new Vector3(side * (float)reach, 0, 0), new Vector3(0, 1.5f, 0), new Vector3(0, 0, 3));
        }

        var reading =
            Assert.Single(PointQuadrat.ReadWalls(list.Build(Alley), [new FoliageWall(0, 0, 0.9, 0, 0.35)], 1));
        Assert.All(reading.Insertions, rod => Assert.Equal([SurfaceKind.Blade, SurfaceKind.Blade], rod));
    }

    // A canopy longer along the row than the cell, by more than a cell.
    [Fact]
    public void A_canopy_longer_than_its_cell_is_met_as_often_as_it_lies_over_itself()
    {
        var list = new TriangleList();
        list.Begin(SurfaceKind.Blade);
        Quad(list, new Vector3(0, -2, 0), new Vector3(0, 6, 0), new Vector3(0, 0, 3));
        var reading =
            Assert.Single(PointQuadrat.ReadWalls(list.Build(Alley), [new FoliageWall(0, 0, 0.9, 0, 0.35)], 1));
        Assert.Equal(4, reading.LeafLayerNumber, 1e-12);
    }

    // One cordon bears both walls: a sheet of leaf in the plane of the left, of clusters in that of the right.
    [Fact]
    public void Walls_that_lean_from_one_cordon_are_read_apart()
    {
        FoliageWall[] walls = [new(0, 0, 0.9, -0.6, 0.35), new(1, 0, 0.9, 0.6, 0.35)];
        var list = new TriangleList();
        foreach (var wall in walls)
        {
            list.Begin(wall.Index == 0 ? SurfaceKind.Blade : SurfaceKind.Cluster);
            var along = new Vector3((float)Math.Sin(wall.Tilt), 0, (float)Math.Cos(wall.Tilt));
            Quad(list, new Vector3(0, 0, 0.9f) + (0.001f * along), new Vector3(0, 1.5f, 0), along);
        }

        var readings = PointQuadrat.ReadWalls(list.Build(new Cell(3, 1.5)), walls, 3);
        Met(SurfaceKind.Blade, readings[0]);
        Met(SurfaceKind.Cluster, readings[1]);

        // The very foot of the walls, where the sheets end, is met by few.
        static void Met(SurfaceKind kind, QuadratReading reading)
        {
            Assert.All(reading.Insertions, rod => Assert.All(rod, met => Assert.Equal(kind, met)));
            Assert.InRange(reading.Insertions.Count(rod => rod.Count == 1), 98, 100);
        }
    }

    // Two roofs from one cordon, one wide and one narrow, and free ground under neither's.
    [Fact]
    public void Roofs_from_one_cordon_are_read_each_under_itself()
    {
        FoliageWall[] walls =
        [
            new(0, 0, 2, -0.5 * Math.PI, 1.2) { OnlySide = -1 },
            new(1, 0, 2, 0.5 * Math.PI, 0.8) { OnlySide = 1 },
        ];
        var list = new TriangleList();
        Roof(list, SurfaceKind.Blade, -1.2f, 0);
        Roof(list, SurfaceKind.Cluster, 0, 0.8f);
        var readings = PointQuadrat.ReadWalls(list.Build(new Cell(3, 1.5)), walls, 3);
        Assert.All(readings[0].Insertions, rod => Assert.Equal([SurfaceKind.Blade], rod));
        Assert.All(readings[1].Insertions, rod => Assert.Equal([SurfaceKind.Cluster], rod));
    }

    // What a roof's wires cover, and not the open alley beside it: to both sides, to one, and rows that face each
    // other.
    [Theory]
    [InlineData(RoofArms.Both, 1, -1.0, 1.0)]
    [InlineData(RoofArms.Right, 1, 0.0, 1.5)]
    [InlineData(RoofArms.Left, 1, -1.5, 0.0)]
    [InlineData(RoofArms.Facing, 2, 0.0, 1.2)]
    public void A_roof_is_probed_where_its_wires_are(RoofArms arms, int rows, double from, double to)
    {
        var scenario = Plants.GrownCanopy.Scenario();
        scenario = scenario with
        {
            Rows = scenario.Rows with { RowsInCell = rows },
            Trellis = new Trellis { Form = TrellisForm.Overhead, RoofArms = arms },
        };
        var list = new TriangleList();
        Roof(list, SurfaceKind.Blade, (float)from, (float)to);
        if (arms == RoofArms.Facing) Roof(list, SurfaceKind.Blade, 3 - (float)to, 3 - (float)from);
        var scene = list.Build(CanopyScene.CellOf(scenario));
        Assert.Equal(0, PointQuadrat.Read(scene, scenario).GapFraction);
        Assert.Equal(1, PointQuadrat.Read(scene, scenario).LeafLayerNumber);

        // Half of it bare: the rods are even under it.
        list = new TriangleList();
        Roof(list, SurfaceKind.Blade, (float)from, 0.5f * (float)(from + to));
        if (arms == RoofArms.Facing) Roof(list, SurfaceKind.Blade, 3 - (float)to, 3 - (0.5f * (float)(from + to)));
        Assert.Equal(0.5, PointQuadrat.Read(list.Build(CanopyScene.CellOf(scenario)), scenario).GapFraction, 0.11);
    }

    // Across a slope the zone hangs at its own cordon, which stands on the ground under it: the bands of leaf are as
    // high as the zone.
    [Theory]
    [InlineData(0.3)]
    [InlineData(-0.3)]
    public void Rods_follow_a_cross_slope(double rise)
    {
        FoliageWall[] walls = [new(0, -0.6, 1.7, Math.PI, 0.4), new(1, 0.6, 1.7, Math.PI, 0.4)];
        var list = new TriangleList();
        foreach (var wall in walls)
        {
            list.Begin(SurfaceKind.Blade);
            var (low, high) = ((float)(wall.FruitZone.Height(0) - 0.001), (float)(wall.FruitZone.Height(1) + 0.001));
            var ground = (float)(rise * wall.CordonAcross);
            Quad(list, new Vector3((float)wall.CordonAcross, 0, ground + low), new Vector3(0, 1.5f, 0),
                new Vector3(0, 0, high - low));
        }

        foreach (var reading in PointQuadrat.ReadWalls(list.Build(new Cell(3, 1.5, rise)), walls, 3))
            Assert.All(reading.Insertions, rod => Assert.Single(rod));
    }

    private static void Roof(TriangleList list, SurfaceKind kind, float from, float to)
    {
        list.Begin(kind);
        Quad(list, new Vector3(from, 0, 2), new Vector3(to - from, 0, 0), new Vector3(0, 1.5f, 0));
    }

    private static void Quad(TriangleList list, Vector3 corner, Vector3 a, Vector3 b)
    {
        list.Add(corner, corner + a, corner + a + b);
        list.Add(corner, corner + a + b, corner + b);
    }
}
