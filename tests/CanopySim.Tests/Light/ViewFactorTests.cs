using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using Xunit;

namespace CanopySim.Tests.Light;

public class ViewFactorTests
{
    // View factor F between equal parallel rectangles face to face, of sides X and Y in gaps: the project's reference table of
    // the closed form (Howell, A Catalog of Radiation Configuration Factors, C-11). The lower rectangle's upper side sees the
    // sky but for F and for the copies of both far away; over black ground its lower side sees nothing.
    [Theory]
    [InlineData(0.5, 0.5, 0.068590)]
    [InlineData(1, 1, 0.199825)]
    [InlineData(1, 2, 0.285875)]
    [InlineData(2, 2, 0.415253)]
    [InlineData(5, 2, 0.529931)]
    public void Parallel_rectangles_hide_their_view_factor_of_the_sky(double x, double y, double viewFactor)
    {
        const float Gap = 0.4f;
        var (first, second) = (Gap * (float)x * new Vector3(0.8f, 0.6f, 0), Gap * (float)y * new Vector3(-0.6f, 0.8f, 0));
        var scenes = new RandomScenes(new Cell(16, 16));
        for (var blade = 0; blade < 2; blade++)
            scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), new Vector3(8, 8, 0.1f + (blade * Gap)), first, second);
        var geometry = LightGeometry.Build(scenes.Build(), SkyRings.Spiral(600), LightCases.Quality(0.05, 0.05), 2);
        var light = geometry.Solve([LightCases.UniformSky()], LightCases.Black, 2);
        var area = Gap * Gap * x * y;

        // 0.002 for the copies, 0.004 for pixels and directions.
        Assert.Equal(1 - viewFactor, light.AbsorbedPar[0] / area, 0.006);
    }
}
