using CanopySim.Geometry;
using CanopySim.Tests.Plants;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Geometry;

/// <summary>Canopies of any block that a scenario can describe.</summary>
public class CanopyScenePropertyTests
{
    [Fact]
    public void Any_block_gives_triangles_of_numbers_and_blades_of_their_leaves_area() =>
        Gen.Select(ScenarioGen.Any, Gen.Int[0, 60], Gen.Double[0, 1], Gen.Bool).Sample((scenario, days, share, drawn) =>
        {
            var grown = new GrownCanopy(scenario).Grow(days, share);
            var placed = new CanopyScene(scenario)
                .Place(grown.Canopy, drawn ? SceneDetail.Drawn : SceneDetail.ForLight);
            Assert.All(placed.Scene.Corners, corner =>
                Assert.True(float.IsFinite(corner.X + corner.Y + corner.Z), $"{corner}"));
            Assert.Equal(placed.Scene.SurfaceCount, placed.Leaves.Count);
            var areas = placed.Scene.SurfaceAreas();
            for (var surface = 0; surface < areas.Length; surface++)
            {
                Assert.True(double.IsFinite(areas[surface]));
                // Corners are single precision, 2.4e-7 m at 2 m and 1e-6 m at the 16 m of eight vines on a slope.
                if (placed.Leaves[surface] is { } leaf)
                    Assert.Equal(leaf.Area, areas[surface], (1e-5 * leaf.Area) + (4e-6 * Math.Sqrt(leaf.Area)));
            }
        }, iter: 60);

    /// <summary>
    /// The cell repeats without end: where it is cut changes nothing, so a canopy moved along its row by any length
    /// keeps its light.
    /// </summary>
    [Fact]
    public void The_ground_of_any_block_lies_under_its_vines() =>
        ScenarioGen.Any.Sample(scenario =>
        {
            var cell = CanopyScene.CellOf(scenario);
            Assert.True(double.IsFinite(cell.RiseAcross) && double.IsFinite(cell.RiseAlong));
            // The steepest rise is that of the slope, whichever way the row runs.
            Assert.Equal(Math.Tan(scenario.Site.Slope * Math.PI / 180),
                Math.Sqrt((cell.RiseAcross * cell.RiseAcross) + (cell.RiseAlong * cell.RiseAlong)), 1e-9);
            Assert.Equal(scenario.Rows.GroundAreaPerVine * scenario.Rows.VineCount, cell.GroundArea, 1e-9);
        }, iter: 500);
}
