using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.Sky;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>
/// A hedge of random black blades becomes the opaque box that holds it. The box of height H and width w in rows R apart takes
/// f = min(1, (w + H |s|) / R) of the direct light on the horizontal, s being the sun's part across the row over its vertical part: the
/// project's notes on growth, section 7 (plain geometry of a box's shadow), with H 1.2, w 0.4, R 2.5 m and the days' shares printed there.
/// Rows of two directions, 21 June and 21 August, 38.5 and 45° N, every hour of the engine's own sun.
/// </summary>
public class HedgeOpacityTests
{
    private const double Height = 1.2;
    private const double Width = 0.4;
    private const double Spacing = 2.5;

    // A short piece of row: along it the hedge is the same everywhere but for chance.
    private const double Along = 0.25;
    private const double Side = 0.01;
    private const double Pixel = 0.004;
    private const float Left = 1.05f;

    // Leaf area per volume [m⁻¹]. The last leaves exp(−0.5 · 128 · 0.4) = 1e-11 straight through its width: what still passes,
    // passes its corners.
    private static readonly double[] Densities = [8, 32, 128];

    private static readonly Lazy<(LightGeometry[] Hedges, LightGeometry Box)> Scenes = new(() =>
    (
        Array.ConvertAll(Densities, density => LightGeometry.Build(Hedge(density), [Vector3.UnitZ], LightCases.Quality(0.05, Pixel), 2)),
        LightGeometry.Build(Box(), [Vector3.UnitZ], LightCases.Quality(0.05, Pixel), 2)));

    private readonly record struct Moment(Vector3 Sun, double Weight)
    {
        public double Across => Math.Abs(Sun.X / Sun.Z);

        public double ClosedForm => Math.Min(1, (Width + (Height * Across)) / Spacing);

        // Edges of the shadow fall on columns either way: half a column at each of two edges, columns 1.3 / Sun.Z wider than the pixel at most.
        public double PixelError => 1.3 * Pixel / Sun.Z / Spacing;
    }

    [Theory]
    [InlineData(38.5, 6, true, 0.493)]
    [InlineData(38.5, 6, false, 0.271)]
    [InlineData(38.5, 8, true, 0.509)]
    [InlineData(38.5, 8, false, 0.365)]
    [InlineData(45, 6, true, 0.510)]
    [InlineData(45, 6, false, 0.315)]
    [InlineData(45, 8, true, 0.528)]
    [InlineData(45, 8, false, 0.430)]
    public void Shares_of_direct_light_become_those_of_the_opaque_box(double latitude, int month, bool northSouth, double printed)
    {
        var moments = Moments(latitude, new DateOnly(2025, month, 21), northSouth ? 0 : 90);
        var all = moments.Sum(moment => moment.Weight);
        var closed = moments.Sum(moment => moment.Weight * moment.ClosedForm) / all;

        // The print has declinations of 23.44 and 11.75° and integrates the day; here are the sun of the date (12.0° on 21 August) and
        // steps of an hour. Measured: 0.002.
        Assert.Equal(printed, closed, 0.004);
        var box = Taken(Scenes.Value.Box, moments);
        for (var hour = 0; hour < moments.Length; hour++) Assert.Equal(moments[hour].ClosedForm, box[hour], 1e-6 + moments[hour].PixelError);

        var (before, missing) = (new double[moments.Length], new double[Densities.Length]);
        for (var level = 0; level < Densities.Length; level++)
        {
            var taken = Taken(Scenes.Value.Hedges[level], moments);
            var least = 0.0;
            for (var hour = 0; hour < moments.Length; hour++)
            {
                // Blades all lie within the box, and those of one density are among those of the next: never more than it, never less.
                Assert.InRange(taken[hour], before[hour], moments[hour].ClosedForm + 1e-6 + moments[hour].PixelError);
                var (bound, chance) = Least(Densities[level], moments[hour]);
                Assert.True(
                    taken[hour] > bound - chance - moments[hour].PixelError,
                    $"density {Densities[level]}, sun {moments[hour].Sun}: {taken[hour]}, at least {bound} ± {chance}");
                least += moments[hour].Weight * bound / all;
            }

            before = taken;
            missing[level] = closed - (moments.Zip(taken, (moment, share) => moment.Weight * share).Sum() / all);
            Assert.InRange(missing[level], 0, closed - least);
        }

        // Opaque at last: what passes are corners, where the path shrinks to nothing, as 1 / density, and the outermost depth of a blade, which
        // is thinner. Four times as dense a hedge misses a quarter to a half of what it did.
        Assert.InRange(missing[1] / missing[0], 0.2, 0.5);
        Assert.InRange(missing[2] / missing[1], 0.25, 0.5);

        // Measured: 0.006 to 0.0104 of the direct light.
        Assert.InRange(missing[2], 0, 0.011);
    }

    // Direct light of the growth notes: 0.75 to the air mass 1 / sin elevation, on the horizontal.
    private static Moment[] Moments(double latitude, DateOnly date, double rowAzimuth)
    {
        var frame = new SkyFrame(rowAzimuth, 1);
        var site = new Site { Latitude = latitude, Longitude = 0 };
        return
        [
            .. Enumerable.Range(0, 24).Select(hour => HourlySun.At(date, hour, site, 0)).Where(sun => sun.CosZenith > 0.02).Select(sun => new Moment(
                frame.CellFromSky(sun.Position.ZenithRadians, sun.Position.AzimuthRadians),
                sun.LitFraction * Math.Pow(0.75, 1 / sun.CosZenith) * sun.CosZenith)),
        ];
    }

    private static double[] Taken(LightGeometry geometry, Moment[] moments) =>
        [.. geometry.Solve([.. moments.Select(moment => LightCases.Sun(moment.Sun))], LightCases.Black, 2).GroundSunlitFraction
            .Select(lit => 1 - lit)];

    /// <summary>
    /// A share that the hedge takes at least, on average over throws, and four standard errors. Blades that lie wholly in the box have their
    /// full density, and more, further than their diagonal from its faces; the light through that core alone passes with exp(−G D path), G = 1/2.
    /// Patches of the ground as large as a blade's shadow are lit or not by themselves.
    /// </summary>
    private static (double Share, double Chance) Least(double density, Moment moment)
    {
        const int Places = 4000;
        var (edge, up) = (Side * Math.Sqrt(2), moment.Sun.Z);
        var passed = 0.0;
        for (var place = 0; place < Places; place++)
        {
            var ground = (place + 0.5) / Places * Spacing;
            var path = 0.0;

            // Over this place a line of light is at ground + s h across the rows at the height h.
            for (var row = 0; row * Spacing <= ground + (moment.Across * Height); row++)
            {
                var (from, to) = ((row * Spacing) + edge - ground, (row * Spacing) + Width - edge - ground);
                var (low, high) = moment.Across > 1e-9 ? (from / moment.Across, to / moment.Across) : from <= 0 && to >= 0 ? (0, Height) : (0, 0);
                path += Math.Max(0, Math.Min(high, Height - edge) - Math.Max(low, edge)) / up;
            }

            passed += Math.Exp(-0.5 * density * path) / Places;
        }

        var patches = Spacing * Along * up / (Side * Side);
        return (1 - passed, 4 * Math.Sqrt(passed * (1 - passed) / patches));
    }

    private static Scene Hedge(double density)
    {
        var blades = (int)Math.Round(density * Width * Height * Along / (Side * Side));
        var scenes = new RandomScenes(new Cell(Spacing, Along));
        for (var blade = 0; blade < blades; blade++)
        {
            double Value(string purpose) => SeededValue.Uniform(62, purpose, blade);
            var (first, second) = ThrownBlades.Edges(BladeAngles.Spherical, Value("inclination"), Value("azimuth"), Value("turn"));
            (first, second) = ((float)Side * first, (float)Side * second);
            var half = 0.5f * (Vector3.Abs(first) + Vector3.Abs(second));
            var room = new Vector3((float)Width, (float)Along, (float)Height) - (2 * half) with { Y = 0 };
            var center = new Vector3(Left + half.X, 0, half.Z) + (room * new Vector3((float)Value("x"), (float)Value("y"), (float)Value("z")));
            scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), center - (0.5f * (first + second)), first, second);
        }

        return scenes.Build();
    }

    private static Scene Box()
    {
        var scenes = new RandomScenes(new Cell(Spacing, Along));
        scenes.AddBox(SurfaceKind.Wood, new Vector3(Left, 0, 0), new Vector3((float)Width, (float)Along, (float)Height));
        return scenes.Build();
    }
}
