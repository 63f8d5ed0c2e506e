using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;
using Xunit;

namespace CanopySim.Tests.Light;

public class GapFractionTests
{
    /// <summary>
    /// N blades thrown independently leave the gap (1 − p)^N, with p the mean share of the cell that one of them covers
    /// (binomial model, Nilson 1971, doi:10.1016/0002-1571(71)90092-6). Blades of spherical inclination cover half their area,
    /// over the cosine. The exponential lies above it; the last line shows that this test tells one from the other.
    /// </summary>
    [Theory]
    [InlineData(0, false)]
    [InlineData(45, false)]
    [InlineData(70, true)]
    public void Random_blades_leave_the_binomial_gap(double zenith, bool tellsFromExponential)
    {
        const int Scenes = 300;
        const int Blades = 40;
        const float Side = 0.2f;
        var (sum, squares) = (0.0, 0.0);
        for (var scene = 0; scene < Scenes; scene++)
        {
            var gap = LightCases.SunOnly(Thrown(scene, Blades, Side), SkyRings.Direction(zenith, 37 * scene), 0.01).GroundSunlitFraction[0];
            (sum, squares) = (sum + gap, squares + (gap * gap));
        }

        var mean = sum / Scenes;
        var error = Math.Sqrt(((squares / Scenes) - (mean * mean)) / (Scenes - 1));
        var covered = 0.5 * Side * Side / Math.Cos(zenith * Math.PI / 180);
        var expected = Math.Pow(1 - covered, Blades);
        Assert.True(Math.Abs(mean - expected) < 4 * error, $"gap {mean} ± {error}, expected {expected}");
        if (tellsFromExponential) Assert.True(mean < Math.Exp(-covered * Blades) - (3 * error), $"gap {mean} ± {error} is that of an exponential");
    }

    private static Scene Thrown(int scene, int blades, float side)
    {
        var scenes = new RandomScenes(new Cell(1, 1));
        for (var blade = 0; blade < blades; blade++)
        {
            double Value(string purpose) => SeededValue.Uniform(21, purpose, scene, blade);
            var (first, second) = RandomScenes.Frame(Value("height"), Value("azimuth"), Value("turn"));
            var center = new Vector3((float)Value("x"), (float)Value("y"), (float)(0.5 + Value("z")));
            scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), center - (0.5f * side * (first + second)), side * first, side * second);
        }

        return scenes.Build();
    }
}
