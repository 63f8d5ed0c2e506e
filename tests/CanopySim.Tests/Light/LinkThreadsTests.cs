using CanopySim.Geometry;
using CanopySim.Light;
using Xunit;

namespace CanopySim.Tests.Light;

public class LinkThreadsTests
{
    /// <summary>More hours than one pass of the solver takes, more directions than workers.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    public void Links_and_solution_are_the_same_bits_for_any_number_of_threads(int threads)
    {
        var (one, oneLight) = Solve(1);
        var (many, manyLight) = Solve(threads);
        Assert.Equal(one.Matrix.Starts, many.Matrix.Starts);
        Assert.Equal(one.Matrix.Senders, many.Matrix.Senders);
        Assert.Equal(one.Matrix.Counts, many.Matrix.Counts);
        Assert.Equal(one.Matrix.SkyStarts, many.Matrix.SkyStarts);
        Assert.Equal(one.Matrix.SkyDirections, many.Matrix.SkyDirections);
        Assert.Equal(one.Matrix.SkyCounts, many.Matrix.SkyCounts);
        Assert.Equal(one.SkyGapFraction, many.SkyGapFraction);
        Assert.Equal(one.InsideLinkShare, many.InsideLinkShare);
        Assert.Equal(oneLight.AbsorbedPar, manyLight.AbsorbedPar);
        Assert.Equal(oneLight.AbsorbedNir, manyLight.AbsorbedNir);
        Assert.Equal(oneLight.AbsorbedParDirect, manyLight.AbsorbedParDirect);
        Assert.Equal(oneLight.SunlitShare, manyLight.SunlitShare);
        Assert.Equal(oneLight.GroundSunlitFraction, manyLight.GroundSunlitFraction);
        Assert.Equal(oneLight.ParBudgets, manyLight.ParBudgets);
        Assert.Equal(oneLight.NirBudgets, manyLight.NirBudgets);
    }

    private static (LightGeometry Geometry, LightSolution Light) Solve(int threads)
    {
        var scene = RandomScenes.Hedge(150, 21, new Cell(1.1, 0.9, 0.1, 0.05));
        var geometry = LightGeometry.Build(scene, SkyRings.Spiral(37), LightCases.Quality(0.015, 0.01), threads);
        IncidentLight[] hours =
        [
            .. Enumerable.Range(0, 21).Select(hour => LightCases.UniformSky(10 + hour) with
            {
                SunDirection = SkyRings.Direction(85 - (3 * hour), 17 * hour),
                DirectNormalPar = 20 * hour,
                DirectNormalNir = 25 * hour,
            }),
        ];
        return (geometry, geometry.Solve(hours, new Optics(), threads));
    }
}
