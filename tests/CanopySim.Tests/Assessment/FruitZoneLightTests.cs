using System.Numerics;
using CanopySim.Assessment;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Tests.Light;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Assessment;

public class FruitZoneLightTests
{
    [Theory]
    [InlineData(TrellisForm.UprightHedge, 1.1)]
    [InlineData(TrellisForm.HangingCurtain, 1.45)]
    [InlineData(TrellisForm.Overhead, 1.75)]
    public void The_bars_hang_in_the_fruit_zone(TrellisForm form, double height)
    {
        var scenario = GrownCanopy.Scenario(form);
        scenario = scenario with { Trellis = new Trellis { Form = form } };
        Assert.Equal(height, Read(scenario, new TriangleList(), LightCases.UniformSky(100)).Height, 1e-12);
    }

    // Over black ground a bar that looks up has the whole sky, one that looks aside half of it, and the sun from its
    // side.
    [Fact]
    public void Without_plants_the_bars_lie_in_the_open()
    {
        var scenario = Black();
        var sun = SkyRings.Direction(60, 0);
        var light = Read(scenario, new TriangleList(), LightCases.UniformSky(100) with { SunDirection = sun, DirectNormalPar = 500 });
        Assert.Equal(100 + 250, light.Up.Total, 1e-3);
        Assert.Equal(50 + (500 * Math.Sin(Math.PI / 3)), light.Right.Total, 0.2);
        Assert.Equal(50, light.Left.Total, 0.2);
        Assert.Null(light.Clusters);
    }

    // A black roof 1 m wide and 0.2 m over the bar, from the middle of each row out to its right and endless along it.
    [Fact]
    public void A_roof_on_the_right_takes_the_light_from_the_right()
    {
        var scenario = Black();
        var cell = CanopyScene.CellOf(scenario);
        var list = new TriangleList();
        list.Begin(SurfaceKind.Blade, 0);
        var height = (float)TrellisLayout.WallsOf(scenario.Trellis)[0].FruitZone.Height(0.5) + 0.2f;
        var (along, across) = (new Vector3(0, (float)cell.Along, 0), new Vector3(1, 0, 0));
        var corner = new Vector3(0, 0, height);
        list.Add(corner, corner + across, corner + across + along);
        list.Add(corner, corner + across + along, corner + along);
        var light = Read(scenario, list, LightCases.UniformSky());

        // Strips of endless length: F of a level element is half the difference of the sines of the angles from the
        // zenith to the strip's edges, of an upright one half the difference of the cosines. All sensors of the bar see
        // the same, so nothing evens out the error of their 1,000 rays on many edges.
        var (up, right, left) = (0.0, 0.0, 0.0);
        for (var row = -400; row <= 400; row++)
        {
            var (near, far) = (Math.Atan(cell.Across * row / 0.2), Math.Atan(((cell.Across * row) + 1) / 0.2));
            up += (Math.Sin(far) - Math.Sin(near)) / 2;
            if (row >= 0) right += (Math.Cos(near) - Math.Cos(far)) / 2;
            else left += (Math.Cos(far) - Math.Cos(near)) / 2;
        }

        Assert.Equal(1 - up, light.Up.Total, 0.008);
        Assert.Equal(0.5 - right, light.Right.Total, 0.008);
        Assert.Equal(0.5 - left, light.Left.Total, 0.008);
    }

    // A cluster in the open under a uniform sky over black ground: every face sees the part of the sky that its tilt
    // leaves.
    [Fact]
    public void A_cluster_in_the_open_reads_half_the_sky()
    {
        var scenario = Black();
        var list = new TriangleList();
        list.Begin(SurfaceKind.Cluster);
        list.AddSpindle(new Vector3(0.2f, 0.3f, 1.1f), 0.15f, 0.04f);
        var light = Read(scenario, list, LightCases.UniformSky(100));
        Assert.Equal(50, Assert.NotNull(light.Clusters), 1.5);
        Assert.Empty(
            FruitZoneLight.Read(scenario, Geometry(scenario, list).Solve([], scenario.Optics, 1),
            Geometry(scenario, list).SolveWithRadiosity([], scenario.Optics, 1).Radiosity, 1));
    }

    private static Scenario Black() => GrownCanopy.Scenario() with { Optics = LightCases.Uniform(0, 0, 0.3, 0) };

    private static LightGeometry Geometry(Scenario scenario, TriangleList list) =>
        LightGeometry.Build(list.Build(CanopyScene.CellOf(scenario)), SkyRings.Spiral(200),
        LightCases.Quality(0.006, 0.006), 2);

    private static FruitZoneLight Read(Scenario scenario, TriangleList list, IncidentLight hour)
    {
        var (solution, radiosity) = Geometry(scenario, list).SolveWithRadiosity([hour], scenario.Optics, 2);
        return Assert.Single(FruitZoneLight.Read(scenario, solution, radiosity, 2));
    }
}
