using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using Xunit;
using static CanopySim.Tests.Sky.ReferenceTable;

namespace CanopySim.Tests.Light;

/// <summary>
/// Mean projected area of blades of known inclinations, as the raster finds it blade by blade, against the projection function G:
/// <c>G_function.csv</c> (integrals over de Wit's distributions) and <c>campbell_K.csv</c> (Campbell's closed form), the project's
/// reference tables, worked out independently.
/// </summary>
public class ProjectionTests
{
    private const int Throws = 10;
    private const int Blades = 100;
    private const double Side = 0.1;

    // No shadow may reach its own copy: at 80° the longest is 0.14 m · tan 80° = 0.8 m, in a cell of 1 m.
    private static readonly double[] Zeniths = [0, 10, 20, 30, 40, 50, 57.3, 60, 65, 70, 75, 80];

    [Theory]
    [InlineData("spherical")]
    [InlineData("planophile")]
    [InlineData("erectophile")]
    [InlineData("plagiophile")]
    [InlineData("extremophile")]
    [InlineData("uniform")]
    [InlineData("vertical")]
    [InlineData("horizontal")]
    [InlineData("ellipsoidal_x0.5")]
    [InlineData("ellipsoidal_x1.5")]
    [InlineData("ellipsoidal_x2")]
    [InlineData("ellipsoidal_x3")]
    public void Blades_cast_the_shadow_of_their_distribution(string name)
    {
        var angles = name switch
        {
            "planophile" => BladeAngles.Planophile,
            "erectophile" => BladeAngles.Erectophile,
            "plagiophile" => BladeAngles.Plagiophile,
            "extremophile" => BladeAngles.Extremophile,
            "uniform" => BladeAngles.Uniform,
            "vertical" => BladeAngles.Vertical,
            "horizontal" => BladeAngles.Horizontal,
            "ellipsoidal_x0.5" => BladeAngles.Ellipsoidal(0.5),
            "ellipsoidal_x1.5" => BladeAngles.Ellipsoidal(1.5),
            "ellipsoidal_x2" => BladeAngles.Ellipsoidal(2),
            "ellipsoidal_x3" => BladeAngles.Ellipsoidal(3),
            _ => BladeAngles.Spherical,
        };
        var column = Array.IndexOf(Header("G_function.csv"), name);
        var table = Read("Light", "G_function.csv").ToDictionary(row => Number(row[0]), row => Number(row[column]));
        Check(angles, Zeniths, zenith => table[zenith]);
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.25)]
    [InlineData(0.75)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(10)]
    public void Ellipsoidal_blades_have_Campbells_extinction(double x)
    {
        var table = Read("Light", "campbell_K.csv").Where(row => Number(row[0]) == x).ToDictionary(row => Number(row[1]), row => Number(row[2]));
        Check(BladeAngles.Ellipsoidal(x), [0, 15, 30, 45, 60, 75], zenith => table[zenith] * Math.Cos(zenith * Math.PI / 180));
    }

    // The closed form itself, which other tests take for granted: all rows, printed to six decimals.
    [Fact]
    public void Campbells_closed_form_is_the_table() => Assert.All(Read("Light", "campbell_K.csv"), row =>
        Assert.Equal(Number(row[2]), BladeAngles.EllipsoidalExtinction(Number(row[0]), Math.Cos(Number(row[1]) * Math.PI / 180)), 5.1e-7));

    private static void Check(BladeAngles angles, double[] zeniths, Func<double, double> projection)
    {
        var found = zeniths.Select(_ => new double[Throws]).ToArray();
        for (var seed = 0; seed < Throws; seed++)
        {
            for (var blade = 0; blade < Blades; blade++)
            {
                // One blade in each of as many equal parts of the distribution; the sun turns with it.
                double Value(string purpose) => SeededValue.Uniform(81, purpose, seed, blade);
                var (first, second) = ThrownBlades.Edges(angles, (blade + Value("inclination")) / Blades, Value("azimuth"), Value("turn"));
                var scenes = new RandomScenes(new Cell(1, 1));
                var corner = new Vector3((float)Value("x"), (float)Value("y"), 0.3f);
                scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), corner, (float)Side * first, (float)Side * second);
                var suns = zeniths.Select(zenith => LightCases.Sun(SkyRings.Direction(zenith, 30)));
                var light = LightGeometry.Build(scenes.Build(), [Vector3.UnitZ], LightCases.Quality(0.1, 0.01), 1)
                    .Solve([.. suns], LightCases.Black, 1);
                for (var zenith = 0; zenith < zeniths.Length; zenith++)
                    found[zenith][seed] += light.AbsorbedParDirect[zenith] / (Side * Side) / Blades;
            }
        }

        for (var zenith = 0; zenith < zeniths.Length; zenith++)
        {
            var (estimate, expected) = (Estimate.Of(found[zenith]), projection(zeniths[zenith]));
            Assert.True(
                Math.Abs(estimate.Mean - expected) < (4 * estimate.StandardError) + 5.1e-7,
                $"{zeniths[zenith]}°: {estimate.Mean} ± {estimate.StandardError}, expected {expected}");
        }
    }

    private static string[] Header(string file) => File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Light", file)).First().Split(',');
}
