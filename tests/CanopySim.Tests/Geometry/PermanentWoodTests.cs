using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Geometry;

/// <summary>Trunk, arms and cordons of every form, in every row, on the flat and on slopes.</summary>
public class PermanentWoodTests
{
    private const float Radius = 0.03f;

    [Theory]
    [InlineData(TrellisForm.HighWire, 1)]
    [InlineData(TrellisForm.TwinCurtain, 2)]
    [InlineData(TrellisForm.OpenU, 2)]
    [InlineData(TrellisForm.SlantedV, 2)]
    [InlineData(TrellisForm.UpAndDown, 2)]
    [InlineData(TrellisForm.Overhead, 1)]
    public void A_cordon_runs_the_length_of_the_cell_under_each_wall_s_shoots(TrellisForm form, int cordons)
    {
        var scenario = GrownCanopy.Scenario(form, slope: 15, aspect: 110);
        var scene = Wood(scenario);
        var found = TrellisLayout.CordonsOf(scenario.Trellis);
        Assert.Equal(cordons, found.Count);
        foreach (var (across, height) in found)
            foreach (var along in new[] { 0f, 1.5f })
            {
                var end = new Vector3((float)across, along, (float)(height - 0.02 + (scene.Cell.RiseAcross * across) + (scene.Cell.RiseAlong * along)));
                Assert.Contains(scene.Corners, corner => Vector3.Distance(corner, end) < Radius);
            }
    }

    [Theory]
    [InlineData(TrellisForm.TwinCurtain)]
    [InlineData(TrellisForm.Bush)]
    public void Arms_leave_the_trunk_s_top(TrellisForm form)
    {
        var scenario = GrownCanopy.Scenario(form);
        var middle = new Vector2(0, 0.75f);
        var corners = Wood(scenario).Corners;
        // The trunk stands on the ground in the middle of its vine, and something reaches out from it.
        Assert.Contains(corners, corner =>
            corner.Z == 0 && Vector2.Distance(new Vector2(corner.X, corner.Y), middle) < 0.04);
        var reach = form == TrellisForm.Bush ? 0.16f : 0.6f;
        var arms = corners.Count(corner => Math.Abs(corner.Y - 0.75f) < 0.2 && Math.Abs(Vector2.Distance(new Vector2(corner.X, corner.Y), middle) - reach) < Radius);
        Assert.True(arms > 0);
        Assert.DoesNotContain(corners, corner => corner.Z > scenario.Trellis.CordonHeightOrDefault + Radius);
    }

    [Fact]
    public void Rows_stand_beside_each_other_on_their_own_ground()
    {
        var scenario = GrownCanopy.Scenario(TrellisForm.HighWire, slope: 20, aspect: 90);
        scenario = scenario with { Rows = scenario.Rows with { RowsInCell = 2 } };
        var cell = CanopyScene.CellOf(scenario);
        Assert.Equal((6, 1.5), (cell.Across, cell.Along));
        var corners = Wood(scenario).Corners;
        Assert.Contains(corners, corner => Vector3.Distance(corner, new Vector3(0, 0, 1.58f)) < Radius);
        Assert.Contains(corners, corner =>
            Vector3.Distance(corner, new Vector3(3, 0, 1.58f + (3 * (float)cell.RiseAcross))) < Radius);

        // Blades lie about both rows alike.
        var placed = new CanopyScene(scenario).Place(new GrownCanopy(scenario).Grow(40).Canopy, SceneDetail.ForLight);
        var centers = placed.Centers.Where((_, surface) => placed.Leaves[surface] is not null).ToList();
        Assert.InRange(centers.Count(center => center.X > 1.5) / (double)centers.Count, 0.4, 0.6);
        Assert.All(centers, center => Assert.True(Math.Min(Math.Abs(center.X), Math.Abs(center.X - 3)) < 1.3));
    }

    // The vine's first surface, before anything has grown.
    private static Scene Wood(Scenario scenario) =>
        new CanopyScene(scenario).Place(VinePlanting.Plant(scenario), SceneDetail.Drawn).Scene;
}
