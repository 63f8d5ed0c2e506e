using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using Xunit;
using static CanopySim.Tests.Sky.ReferenceTable;

namespace CanopySim.Tests.Light;

/// <summary>
/// Layers of random black blades against the exponential law of Monsi &amp; Saeki 1953 with Campbell's ellipsoidal inclinations:
/// <c>gap_and_sunlit.csv</c>, the project's reference table, worked out independently. Rows up to a leaf area index of 4 for the
/// sun, those of 1 and 3 for the sky: denser ones take long and let nothing through. The law is the limit of vanishing blades. N
/// blades that each cover the share p = K LAI / N of the cell leave the gap (1 − p)^N (binomial model, Nilson 1971,
/// doi:10.1016/0002-1571(71)90092-6) and are sunlit in the share ∫ (1 − p u)^(N − 1) du = (1 − (1 − p)^N) / (N p): the table's
/// values are brought to that size and then met within four standard errors over independent throws.
/// </summary>
public class LayerOfBladesTests
{
    private const double Side = 0.08;
    private const int Azimuths = 4;

    // So many that their standard error is itself known to 15 %. 100 throws of two rows, blades of 0.06 m: within 1.8 standard errors.
    private const int Throws = 24;

    // High only so that the two ends, where blades of different slant begin at different heights, count little: they change the sunlit
    // share by less than K LAI (Side / √2 / Depth)², 4e-5 at most.
    private const float Depth = 20;

    // Half a unit of the tables' sixth decimal.
    private const double Printed = 5.1e-7;

    private const double SunPixel = 0.006;

    // A convex figure that misses every point of a square lattice is at most 1 + 2/√3 spacings wide (Hurkens 1990); pixels are stretched
    // by 1.3 at most. A blade's shadow is at least Side |cos| wide: wider ones are met by a pixel for sure, and counted.
    private static readonly double SurelyMet = 1.3 * (1 + (2 / Math.Sqrt(3))) * SunPixel / (0.98 * Side);

    public static TheoryData<double, double> Rows =>
        [.. Read("Light", "gap_and_sunlit.csv").Select(row => (Number(row[0]), Number(row[1]))).Where(row => row.Item1 <= 4)];

    public static TheoryData<double, double> SkyRows =>
        [.. Read("Light", "gap_and_sunlit.csv").Select(row => (Number(row[0]), Number(row[1]))).Where(row => row.Item1 is 1 or 3)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Gap_and_sunlit_area_under_the_sun(double leafAreaIndex, double x)
    {
        var row = Row(leafAreaIndex, x);
        var blades = Count(leafAreaIndex);
        double[] zeniths = [0, 30, 60];
        var gaps = zeniths.Select(_ => new List<double>()).ToArray();
        var sunlits = zeniths.Select(_ => new List<double>()).ToArray();
        for (var seed = 0; seed < Throws; seed++)
        {
            var thrown = Thrown(leafAreaIndex, blades, x, seed);
            var suns = zeniths.SelectMany(zenith => Enumerable.Range(0, Azimuths).Select(turn => SkyRings.Direction(zenith, (90 * turn) + (7 * seed))));
            var directions = suns.ToArray();
            var light = LightGeometry.Build(thrown.Scene, [Vector3.UnitZ], LightCases.Quality(0.05, SunPixel), 2)
                .Solve([.. directions.Select(sun => LightCases.Sun(sun))], LightCases.Black, 2);
            for (var zenith = 0; zenith < zeniths.Length; zenith++)
            {
                var hours = Enumerable.Range(zenith * Azimuths, Azimuths).ToList();
                gaps[zenith].Add(hours.Average(hour => light.GroundSunlitFraction[hour]));
                var shares = hours.SelectMany(hour => Enumerable.Range(0, blades)
                    .Where(blade => Math.Abs(Vector3.Dot(thrown.Normals[blade], directions[hour])) > SurelyMet)
                    .Select(blade => light.SunlitShare[light.IndexOf(hour, blade)]));
                sunlits[zenith].Add(leafAreaIndex * shares.Average());
            }
        }

        for (var zenith = 0; zenith < zeniths.Length; zenith++)
        {
            var (tableGap, tableSunlit) = (Number(row[2 + zenith]), Number(row[5 + zenith]));
            var optical = -Math.Log(tableGap);
            var sizedGap = Math.Pow(1 - (optical / blades), blades);
            Check("gap", zeniths[zenith], Estimate.Of(gaps[zenith]), sizedGap, Printed);

            // The extinction is taken from a gap of six decimals.
            var sizedSunlit = tableSunlit * (1 - sizedGap) / (1 - tableGap);
            Check("sunlit", zeniths[zenith], Estimate.Of(sunlits[zenith]), sizedSunlit, Printed + (4e-5 * leafAreaIndex));
        }

        void Check(string what, double zenith, Estimate found, double expected, double allowance) => Assert.True(
            Math.Abs(found.Mean - expected) < (4 * found.StandardError) + allowance,
            $"{what} at {zenith}°: {found.Mean} ± {found.StandardError}, expected {expected}");
    }

    [Theory]
    [MemberData(nameof(SkyRows))]
    public void Transmission_of_a_uniform_and_an_overcast_sky(double leafAreaIndex, double x)
    {
        var row = Row(leafAreaIndex, x);
        var blades = Count(leafAreaIndex);
        const int Directions = 64;
        var directions = SkyRings.Spiral(Directions);

        // Standard overcast sky of Moon & Spencer 1942: radiance (1 + 2 cos z) / 3.
        var overcast = LightCases.UniformSky() with { SkyRadiance = [.. directions.Select(direction => (1 + (2.0 * direction.Z)) / 3)] };
        var (uniformShares, overcastShares, gapShares) = (new List<double>(), new List<double>(), new List<double>());
        for (var seed = 0; seed < Throws; seed++)
        {
            var geometry = LightGeometry.Build(Thrown(leafAreaIndex, blades, x, Throws + seed).Scene, directions, LightCases.Quality(0.03, 0.05), 2);
            var light = geometry.Solve([LightCases.UniformSky(), overcast], LightCases.Black, 2);
            uniformShares.Add(light.ParBudgets[0].AbsorbedGround / light.ParBudgets[0].IncidentDiffuse);
            overcastShares.Add(light.ParBudgets[1].AbsorbedGround / light.ParBudgets[1].IncidentDiffuse);
            gapShares.Add(geometry.SkyGapFraction);
        }

        double Transmitted(int heights, Func<double, double> radiance, Func<double, double> gap)
        {
            var (through, all) = (0.0, 0.0);
            for (var height = 0; height < heights; height++)
            {
                var cosine = (height + 0.5) / heights;
                (through, all) = (through + (radiance(cosine) * cosine * gap(cosine)), all + (radiance(cosine) * cosine));
            }

            return through / all;
        }

        double Exponential(double cosine) => Math.Exp(-BladeAngles.EllipsoidalExtinction(x, cosine) * leafAreaIndex);
        double Sized(double cosine) => Math.Pow(1 - Math.Min(1, BladeAngles.EllipsoidalExtinction(x, cosine) * leafAreaIndex / blades), blades);
        Check("uniform", uniformShares, 8, _ => 1);
        Check("gap of the sky", gapShares, 8, _ => 1);
        Check("overcast", overcastShares, 9, cosine => 1 + (2 * cosine));

        void Check(string sky, List<double> shares, int column, Func<double, double> radiance)
        {
            // The integral that the table printed, then the same over the directions of the test and for blades of this size.
            Assert.Equal(Number(row[column]), Transmitted(20_000, radiance, Exponential), 1e-6);
            var expected = Transmitted(Directions, radiance, Sized);
            var found = Estimate.Of(shares);
            Assert.True(
                Math.Abs(found.Mean - expected) < (4 * found.StandardError) + Printed,
                $"{sky}: {found.Mean} ± {found.StandardError}, expected {expected}, table {row[column]}");
        }
    }

    private static string[] Row(double leafAreaIndex, double x) =>
        Read("Light", "gap_and_sunlit.csv").Single(row => Number(row[0]) == leafAreaIndex && Number(row[1]) == x);

    private static int Count(double leafAreaIndex) => (int)Math.Round(leafAreaIndex / (Side * Side));

    // The count is whole: blades take the size, within 2 % of Side, that makes the index exact.
    private static ThrownBlades Thrown(double leafAreaIndex, int blades, double x, int seed) => ThrownBlades.Into(
        new Cell(1, 1),
        blades,
        Math.Sqrt(leafAreaIndex / blades),
        BladeAngles.Ellipsoidal(x),
        new Vector3(0, 0, (float)Side),
        new Vector3(1, 1, Depth),
        seed + (1000 * (int)((10 * x) + (100 * leafAreaIndex))));
}
