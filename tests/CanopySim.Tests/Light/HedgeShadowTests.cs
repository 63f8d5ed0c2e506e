using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
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
        var (east, north, up) = Sun(38.5, 23.44, (solarHour - 12) * Math.PI / 12);
        foreach (var (across, along, printed) in new[] { (east, north, northSouth), (-north, east, eastWest) })
        {
            var expected = Math.Min(1, (Width + (Height * Math.Abs(across / up))) / Spacing);
            var light = LightCases.SunOnly(BoxHedge(), Toward(across, along, up), 0.003);
            var shaded = 1 - light.GroundSunlitFraction[0];
            Assert.Equal(printed, expected, 0.0051);
            Assert.Equal(expected, shaded, 0.004);
        }
    }

    /// <summary>
    /// Share of a clear day's beam that the hedges take, by row direction: the project's own table of the same geometry, the beam being
    /// 0.75^(1 / sin elevation); declination 23.44° on 21 June and 11.75° on 21 August. Printed to 0.001.
    /// </summary>
    [Theory]
    [InlineData(38.5, 23.44, 0.493, 0.271)]
    [InlineData(38.5, 11.75, 0.509, 0.365)]
    [InlineData(45, 23.44, 0.510, 0.315)]
    [InlineData(45, 11.75, 0.528, 0.430)]
    public void A_days_beam_on_rows_of_two_directions(double latitude, double declination, double northSouth, double eastWest)
    {
        // The morning stands for the day, which is even about noon. 48 suns meet the formula's integral to 0.0002, shown below.
        const int Suns = 48;
        var sunset = Math.Acos(-Math.Tan(latitude * Math.PI / 180) * Math.Tan(declination * Math.PI / 180));
        var moments = Enumerable.Range(0, Suns).Select(sun => Sun(latitude, declination, -sunset * (sun + 0.5) / Suns)).ToList();
        var geometry = LightGeometry.Build(BoxHedge(), [Vector3.UnitZ], LightCases.Quality(0.05, 0.004), 1);
        foreach (var (rowsNorth, printed) in new[] { (true, northSouth), (false, eastWest) })
        {
            var hours = moments.Select(sun => LightCases.Sun(rowsNorth ? Toward(sun.East, sun.North, sun.Up) : Toward(-sun.North, sun.East, sun.Up)));
            var sunlit = geometry.Solve([.. hours], LightCases.Black, 2).GroundSunlitFraction;
            var (shaded, formula, beam) = (0.0, 0.0, 0.0);
            foreach (var (sun, lit) in moments.Zip(sunlit))
            {
                var weight = Math.Pow(0.75, 1 / sun.Up) * sun.Up;
                var across = rowsNorth ? sun.East : sun.North;
                (shaded, beam) = (shaded + (weight * (1 - lit)), beam + weight);
                formula += weight * Math.Min(1, (Width + (Height * Math.Abs(across / sun.Up))) / Spacing);
            }

            Assert.Equal(printed, formula / beam, 0.0007);

            // A column of pixels more or less at each edge of the shadow: 2 x 0.004 / 2.5 in one moment, a tenth of it over 48.
            Assert.Equal(printed, shaded / beam, 0.0005 + 0.0002 + (0.1 * 2 * 0.004 / Spacing));
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
        var geometry = LightGeometry.Build(scenes.Build(), SkyRings.Spiral(800), LightCases.Quality(0.02, 0.02), 2);
        var alley = spacing - width;
        var h = height / alley;
        Assert.Equal(alley / spacing * (Math.Sqrt(1 + (h * h)) - h), geometry.SkyGapFraction, 0.003);
    }

    // Sun of solar hour angle ω, latitude φ and declination δ: east −cos δ sin ω, north cos φ sin δ − sin φ cos δ cos ω,
    // up sin φ sin δ + cos φ cos δ cos ω.
    private static (double East, double North, double Up) Sun(double latitudeDegrees, double declinationDegrees, double hourAngle)
    {
        var (latitude, declination) = (latitudeDegrees * Math.PI / 180, declinationDegrees * Math.PI / 180);
        var east = -Math.Cos(declination) * Math.Sin(hourAngle);
        var north = (Math.Cos(latitude) * Math.Sin(declination)) - (Math.Sin(latitude) * Math.Cos(declination) * Math.Cos(hourAngle));
        var up = (Math.Sin(latitude) * Math.Sin(declination)) + (Math.Cos(latitude) * Math.Cos(declination) * Math.Cos(hourAngle));
        return (east, north, up);
    }

    private static Vector3 Toward(double across, double along, double up) =>
        Vector3.Normalize(new Vector3((float)across, (float)along, (float)up));

    // Reaches over both ends of the cell, as rows do.
    private static Scene BoxHedge()
    {
        var scenes = new RandomScenes(new Cell(Spacing, 1));
        scenes.AddBox(SurfaceKind.Wood, new Vector3(1.05f, 0, 0), new Vector3((float)Width, 1, (float)Height));
        return scenes.Build();
    }
}
