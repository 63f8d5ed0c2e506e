using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Geometry;

public class CanopySceneTests
{
    [Theory]
    [InlineData(TrellisForm.UprightHedge, SceneDetail.ForLight)]
    [InlineData(TrellisForm.UprightHedge, SceneDetail.Drawn)]
    [InlineData(TrellisForm.HangingCurtain, SceneDetail.ForLight)]
    [InlineData(TrellisForm.Overhead, SceneDetail.Drawn)]
    public void Blades_have_the_area_of_their_leaves(TrellisForm form, SceneDetail detail)
    {
        var scenario = GrownCanopy.Scenario(form);
        var canopy = new GrownCanopy(scenario).Grow(40).Canopy;
        var placed = new CanopyScene(scenario).Place(canopy, detail);
        var areas = placed.Scene.SurfaceAreas();
        var blades = 0;
        for (var surface = 0; surface < areas.Length; surface++)
        {
            Assert.Equal(placed.Scene.Kinds[surface] == SurfaceKind.Blade, placed.Leaves[surface] is not null);
            if (placed.Leaves[surface] is not { } leaf) continue;
            blades++;
            Assert.Equal(leaf.Id.Value, placed.Scene.LeafIds[surface]);
            Assert.Equal(leaf.Area, placed.Areas[surface]);
            // Corners are single precision, 2.4e-7 m at 2 m: what that makes of a blade's rim is the second term.
            Assert.Equal(leaf.Area, areas[surface], (1e-5 * leaf.Area) + (5e-7 * Math.Sqrt(leaf.Area)));
        }

        // Blades under 1 cm² are left out.
        Assert.Equal(canopy.Leaves().Count(leaf => leaf.Area >= 1e-4), blades);
        var sum = canopy.Leaves().Where(leaf => leaf.Area >= 1e-4).Sum(leaf => leaf.Area);
        var placedSum = Enumerable.Range(0, areas.Length).Where(surface => placed.Leaves[surface] is not null)
            .Sum(surface => areas[surface]);
        Assert.Equal(1, placedSum / sum, 1e-5);
    }

    [Theory]
    [InlineData(TrellisForm.UprightHedge)]
    [InlineData(TrellisForm.Overhead)]
    public void Most_blades_look_up(TrellisForm form)
    {
        var scenario = GrownCanopy.Scenario(form);
        var scene = new CanopyScene(scenario)
            .Place(new GrownCanopy(scenario).Grow(40).Canopy, SceneDetail.ForLight).Scene;
        for (var surface = 0; surface < scene.SurfaceCount; surface++)
        {
            if (scene.Kinds[surface] != SurfaceKind.Blade) continue;
            var sum = Triangles(scene, surface)
                .Aggregate(Vector3.Zero, (total, t) => total + Vector3.Cross(t[1] - t[0], t[2] - t[0]));
            Assert.True(sum.Z > 0);
        }
    }

    [Fact]
    public void Clusters_are_closed_and_face_outward()
    {
        var scenario = GrownCanopy.Scenario();
        var scene = new CanopyScene(scenario)
            .Place(new GrownCanopy(scenario).Grow(40).Set().Canopy, SceneDetail.Drawn).Scene;
        var clusters = Enumerable.Range(0, scene.SurfaceCount)
            .Where(surface => scene.Kinds[surface] == SurfaceKind.Cluster).ToList();
        Assert.NotEmpty(clusters);
        foreach (var cluster in clusters)
        {
            var triangles = Triangles(scene, cluster).ToList();
            var corners = new List<Vector3>();
            var edges = new Dictionary<(int, int), int>();
            foreach (var triangle in triangles)
            {
                var ids = triangle.Select(corner => IdOf(corner, corners)).ToArray();
                for (var i = 0; i < 3; i++)
                    edges[(ids[i], ids[(i + 1) % 3])] = edges.GetValueOrDefault((ids[i], ids[(i + 1) % 3])) + 1;
            }

            // Each edge runs once each way: closed, and turned alike.
            Assert.All(edges, edge =>
                Assert.True(edge.Value == 1 && edges.GetValueOrDefault((edge.Key.Item2, edge.Key.Item1)) == 1));
            Assert.Equal(2, corners.Count - (edges.Count / 2) + triangles.Count);
            var middle = corners.Aggregate((a, b) => a + b) / corners.Count;
            Assert.True(
                triangles.Sum(t => Vector3.Dot(t[0] - middle, Vector3.Cross(t[1] - middle, t[2] - middle))) > 0);
        }
    }

    // The ground falls towards the aspect. x is 90° clockwise from the row azimuth, y along it. tan 10° = 0.1763.
    [Theory]
    [InlineData(0, 180, 0, 0.1763)]
    [InlineData(0, 0, 0, -0.1763)]
    [InlineData(0, 90, -0.1763, 0)]
    [InlineData(0, 270, 0.1763, 0)]
    [InlineData(90, 90, 0, -0.1763)]
    [InlineData(90, 180, -0.1763, 0)]
    [InlineData(45, 90, -0.1247, -0.1247)]
    public void Ground_falls_towards_the_aspect(double azimuth, double aspect, double across, double along)
    {
        var scenario = GrownCanopy.Scenario(slope: 10, aspect: aspect);
        var cell = CanopyScene.CellOf(scenario with { Rows = scenario.Rows with { Azimuth = azimuth } });
        Assert.Equal(across, cell.RiseAcross, 1e-4);
        Assert.Equal(along, cell.RiseAlong, 1e-4);
    }

    /// <summary>
    /// On a slope along the row every vine stands on the ground, with its cordon and shoots as high over it as on the
    /// flat.
    /// </summary>
    [Fact]
    public void Vines_stand_on_the_slope()
    {
        var flat = Heights(slope: 0);
        var steep = Heights(slope: 20);
        // A tube or a blade as wide as 0.1 m may reach 0.1 tan 20° further, and so may a tip that drifts along the row
        // from its base.
        var tangent = Math.Tan(UnitConversion.RadiansFromDegrees(20));
        Assert.Equal(flat.Least, steep.Least, 0.1 * tangent + 0.004);
        Assert.Equal(flat.Most, steep.Most, (0.1 + flat.Drift) * tangent);

        static (double Least, double Most, double Drift) Heights(double slope)
        {
            var scenario = GrownCanopy.Scenario(slope: slope, aspect: 180, vines: 3);
            var canopy = new GrownCanopy(scenario).Grow(20).Canopy;
            var drift = canopy.PrimaryShoots().Select(new ShootPath(scenario).Nodes)
                .Max(nodes => Math.Abs(nodes[^1].Y - nodes[0].Y));
            var scene = new CanopyScene(scenario).Place(canopy, SceneDetail.ForLight).Scene;
            var heights =
                scene.Corners.Select(corner =>
                    corner.Z - (scene.Cell.RiseAcross * corner.X) - (scene.Cell.RiseAlong * corner.Y)).ToList();
            return (heights.Min(), heights.Max(), drift);
        }
    }

    private static IEnumerable<Vector3[]> Triangles(Scene scene, int surface) =>
        Enumerable.Range(0, scene.TriangleCount).Where(triangle => scene.SurfaceOfTriangle[triangle] == surface)
            .Select(triangle => scene.Corners[(3 * triangle)..((3 * triangle) + 3)]);

    // Corners closer than a hundredth of a millimetre are one: a ring's last is computed by another angle than its
    // first.
    private static int IdOf(Vector3 corner, List<Vector3> corners)
    {
        var index = corners.FindIndex(other => Vector3.Distance(corner, other) < 1e-5f);
        if (index >= 0) return index;
        corners.Add(corner);
        return corners.Count - 1;
    }
}
