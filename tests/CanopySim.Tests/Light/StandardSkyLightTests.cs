using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.Sky;
using Xunit;
using static CanopySim.Tests.Sky.ReferenceTable;

namespace CanopySim.Tests.Light;

/// <summary>
/// The standard skies of CIE S 011:2003 as blades in the open receive them, all rows of <c>cie_sky_integrals.csv</c>: the project's reference
/// table of their irradiances, integrated independently. Three vertical planes and a horizontal one, through the engine's sky directions.
/// </summary>
public class StandardSkyLightTests
{
    private const int Directions = 1024;
    private const double Pixel = 0.03;
    private const float Side = 0.6f;

    // Copies of the blades in their cell hide the horizon: half the leaf area index of three vertical blades, 5e-4, times their extinction
    // (2 / π) / tan elevation, over the elevations of a wall's light: 5e-4 (2 / π) (4 / π) (ln(1 / 5e-4) − 1/2) = 0.003 of a uniform sky.
    private const double Copies = 0.003;

    // The order of an open sky is 1 / count (see the observed order); these skies are up to 20 times brighter near a low sun than elsewhere.
    // Measured: 3.8 / count of a plane's light.
    private const double DirectionError = 4.0 / Directions;

    private static readonly Vector3 Toward = new(0.6f, 0.8f, 0);
    private static readonly Vector3 Beside = new(0.8f, -0.6f, 0);
    private static readonly SkyDirections Ways = SkyDirections.Create(Directions);

    private static readonly Lazy<LightGeometry> Open = new(() =>
    {
        // Two blades back to back, half a millimeter apart, tell the light of either side. Turned against the pixels, whose rows an edge
        // along them would win or lose whole (2e-3 of the horizontal irradiance).
        var scenes = new RandomScenes(new Cell(32, 32));
        var (beside, toward, up) = (Side * Beside, Side * Toward, Side * Vector3.UnitZ);
        foreach (var (corner, first, second) in new[]
                 {
                     (new Vector3(2, 2, 1), beside, toward),
                     (new Vector3(-2, 0, 1) + (0.0005f * Toward), beside, up),
                     (new Vector3(-2, 0, 1), beside, up),
                     (new Vector3(3, -4, 1), toward, up),
                 }) scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), corner, first, second);
        return LightGeometry.Build(
            scenes.Build(),
            [.. Enumerable.Range(0, Directions).Select(at => new Vector3((float)Ways.X(at), (float)Ways.Y(at), (float)Ways.Z(at)))],
            LightCases.Quality(Pixel, 0.1),
            2);
    });

    public static TheoryData<int> Rows => [.. Enumerable.Range(0, Read("Sky", "cie_sky_integrals.csv").Count())];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Planes_in_the_open_receive_the_irradiances_of_the_table(int row)
    {
        var cells = Read("Sky", "cie_sky_integrals.csv").ElementAt(row);
        var zenith = UnitConversion.RadiansFromDegrees(Number(cells[6]));
        var sky = new CieStandardSky(int.Parse(cells[0]), new SolarPosition(zenith, Math.Atan2(0.6, 0.8)));
        double[] radiance = [.. Enumerable.Range(0, Directions).Select(at => sky.RelativeRadiance(Ways.Zenith(at), Ways.Azimuth(at)))];
        var light = Open.Value.Solve([LightCases.UniformSky() with { SkyRadiance = radiance }], LightCases.Black, 1);
        double[] found = [.. light.AbsorbedPar.Select(power => power / (Side * Side))];

        // Radiance over the zenith's, as the directions sum it [sr].
        double Sum(Vector3 normal) => Enumerable.Range(0, Directions).Sum(at =>
            radiance[at] * Math.Max(0, (normal.X * Ways.X(at)) + (normal.Y * Ways.Y(at)) + (normal.Z * Ways.Z(at))) * Ways.SolidAngle);
        var horizontal = Sum(Vector3.UnitZ);
        Check("horizontal", 1, found[0], horizontal, Number(cells[7]));
        Check("facing the sun", Number(cells[8]), found[1], Sum(Toward), Number(cells[7]));
        Check("away from it", Number(cells[9]), found[2], Sum(-Toward), Number(cells[7]));
        Check("beside it", Number(cells[10]), found[3] / 2, Sum(Beside), Number(cells[7]));

        void Check(string plane, double share, double received, double summed, double tableHorizontal)
        {
            // Directions against the integral, in parts of the horizontal irradiance; then pixels, four standard errors (√(0.0724 P pixel³)
            // a direction, see the view factors) and the hidden horizon.
            var squares = radiance.Sum(value => value * value) * 0.0724 * 4 * Side * 1.3 * Math.Pow(Pixel, 3);
            var pixels = 4 * Math.Sqrt(squares) * Ways.SolidAngle / horizontal / (Side * Side);
            Assert.Equal(share, summed / tableHorizontal, DirectionError * Math.Max(1, share));
            Assert.Equal(summed / horizontal, received, pixels + Copies);
        }
    }
}
