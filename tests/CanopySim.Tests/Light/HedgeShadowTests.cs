using System.Numerics;
using CanopySim.Geometry;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>
/// An opaque box hedge of height H, width w and row spacing R shades min(1, (w + H |s|) / R) of the ground, s being the sun's
/// horizontal part across the row over its vertical part. Plain geometry of the shadow of a box.
/// </summary>
public class HedgeShadowTests
{
    private const double Height = 1.2;
    private const double Width = 0.4;
    private const double Spacing = 2.5;

    // The project's own table for 21 June at 38.5° N: share shaded by solar hour, rounded to 0.01, worked out from the formula.
    public static TheoryData<int, double, double> Table => new()
    {
        { 6, 1.00, 0.76 },
        { 7, 1.00, 0.34 },
        { 8, 0.79, 0.18 },
        { 9, 0.57, 0.22 },
        { 10, 0.41, 0.26 },
        { 11, 0.28, 0.28 },
        { 12, 0.16, 0.29 },
    };

    [Theory]
    [MemberData(nameof(Table))]
    public void Box_hedges_shade_what_the_formula_says(int solarHour, double northSouth, double eastWest)
    {
        // Sun of solar hour angle ω, latitude φ and declination δ: east −cos δ sin ω, north cos φ sin δ − sin φ cos δ cos ω,
        // up sin φ sin δ + cos φ cos δ cos ω.
        var (latitude, declination, hourAngle) = (38.5 * Math.PI / 180, 23.44 * Math.PI / 180, (solarHour - 12) * Math.PI / 12);
        var east = -Math.Cos(declination) * Math.Sin(hourAngle);
        var north = (Math.Cos(latitude) * Math.Sin(declination)) - (Math.Sin(latitude) * Math.Cos(declination) * Math.Cos(hourAngle));
        var up = (Math.Sin(latitude) * Math.Sin(declination)) + (Math.Cos(latitude) * Math.Cos(declination) * Math.Cos(hourAngle));
        foreach (var (across, along, printed) in new[] { (east, north, northSouth), (-north, east, eastWest) })
        {
            var expected = Math.Min(1, (Width + (Height * Math.Abs(across / up))) / Spacing);
            var scenes = new RandomScenes(new Cell(Spacing, 1));

            // Reaches over both ends of the cell, as rows do.
            scenes.AddBox(SurfaceKind.Wood, new Vector3(1.05f, 0, 0), new Vector3((float)Width, 1, (float)Height));
            var light = LightCases.SunOnly(scenes.Build(), Vector3.Normalize(new Vector3((float)across, (float)along, (float)up)), 0.003);
            var shaded = 1 - light.GroundSunlitFraction[0];
            Assert.Equal(printed, expected, 0.0051);
            Assert.Equal(expected, shaded, 0.004);
        }
    }

    // The mean view of the sky from an alley of width a between walls of height H: sqrt(1 + h²) − h, h = H / a, so that the
    // ground's share of a uniform sky is (a / R)(sqrt(1 + h²) − h). Crossed strings (Hottel).
    [Theory]
    [InlineData(0.5, 1.5, 2.5)]
    [InlineData(0.4, 1.2, 2.5)]
    [InlineData(1.0, 0.5, 3.0)]
    public void An_alley_sees_the_sky_between_its_walls(double width, double height, double spacing)
    {
        var scenes = new RandomScenes(new Cell(spacing, 1));
        scenes.AddBox(SurfaceKind.Wood, new Vector3(0.6f, 0, 0), new Vector3((float)width, 1, (float)height));
        var geometry = CanopySim.Light.LightGeometry.Build(scenes.Build(), SkyRings.Spiral(800), LightCases.Quality(0.02, 0.02), 2);
        var alley = spacing - width;
        var h = height / alley;
        Assert.Equal(alley / spacing * (Math.Sqrt(1 + (h * h)) - h), geometry.SkyGapFraction, 0.003);
    }
}
