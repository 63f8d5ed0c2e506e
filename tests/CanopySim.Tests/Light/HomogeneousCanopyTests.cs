using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using Xunit;
using static CanopySim.Tests.Sky.ReferenceTable;

namespace CanopySim.Tests.Light;

/// <summary>
/// Horizontally uniform canopies of small leaves with spherical normals against photon tracing in the turbid limit by a program of its
/// own, 400,000 photons a row: <c>rt_homogeneous_mc.csv</c>, the project's reference table, all rows. Optics of the RAMI red and near
/// infrared scenes (Pinty et al. 2001, 2004, from memory), of vines, and leaves that absorb nothing.
/// </summary>
public class HomogeneousCanopyTests
{
    private const double Side = 0.06;
    private const int Throws = 8;
    private const int Azimuths = 4;
    private const double Photons = 400_000;

    // Leaves stand so far apart that few flights are shorter than a leaf is wide. Depth does not enter the table.
    private const float Depth = 30;

    // The overhead sun stands for the mean of suns this far from it, under which other leaves shade each other.
    private const double NearZenith = 3;

    private static readonly string[][] Table = [.. Read("Light", "rt_homogeneous_mc.csv")];

    private static readonly Lazy<Dictionary<int, List<double[]>>> Solved = new(SolveAll);

    public static TheoryData<int> Rows => [.. Enumerable.Range(0, Table.Length)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Light_ends_where_the_photons_end(int row)
    {
        var cells = Table[row];
        var (leafAreaIndex, scattered, zenith) = (Number(cells[1]), Number(cells[2]) + Number(cells[3]), Number(cells[5]));
        var slant = zenith < 0 ? 1 : 1 / Math.Cos(zenith * Math.PI / 180);
        var optical = 0.5 * leafAreaIndex * slant;
        var blades = Blades(leafAreaIndex);

        // What a blade's size does to the gap: N blades leave (1 − τ/N)^N instead of exp(−τ), τ the optical depth. For the sky the most
        // that it does in any direction: τ² exp(−τ) / (2 N) is largest at τ = 2.
        var sizedGap = zenith < 0 ? 2 / (Math.E * Math.E * blades) : Math.Exp(-optical) - Math.Pow(1 - (optical / blades), blades);

        // Light that a leaf sends on and another meets within a leaf's diagonal knows where on the leaf it came from; links do not.
        // That share of flights is all that can go astray, of what is scattered.
        var shortFlights = scattered * (1 - Number(cells[9])) * Side * Math.Sqrt(2) * 0.5 * leafAreaIndex / Depth;

        // A sun aside of the zenith has a longer path: no share changes by more than the optical depth does.
        var tilt = zenith == 0 ? optical * ((1 / Math.Cos(NearZenith * Math.PI / 180)) - 1) : 0;
        for (var term = 0; term < 4; term++)
        {
            var expected = Number(cells[6 + term]);
            var found = Estimate.Of([.. Solved.Value[row].Select(values => values[term])]);
            var photons = Math.Sqrt(Math.Max(0, expected * (1 - expected)) / Photons);
            var error = Math.Sqrt((found.StandardError * found.StandardError) + (photons * photons));
            Assert.True(
                Math.Abs(found.Mean - expected) < (4 * error) + sizedGap + (term < 3 ? shortFlights : 0) + tilt + 5.1e-6,
                $"{string.Join(' ', cells.AsSpan(0, 6)!)}, term {term}: {found.Mean} ± {error}, table {expected}");
        }

        // Nothing is lost: leaves that absorb nothing, throw by throw.
        if (scattered < 1) return;
        foreach (var values in Solved.Value[row])
        {
            Assert.Equal(0, values[1], 1e-6);
            Assert.Equal(1, values[0] + values[2], 1e-4);
            if (Number(cells[4]) == 1) Assert.Equal(1, values[0], 1e-4);
        }
    }

    private static int Blades(double leafAreaIndex) => (int)Math.Round(leafAreaIndex / (Side * Side));

    // Albedo, absorbed by leaves and by soil, uncollided, of each throw by row.
    private static Dictionary<int, List<double[]>> SolveAll()
    {
        var solved = Enumerable.Range(0, Table.Length).ToDictionary(row => row, _ => new List<double[]>());
        foreach (var canopy in Enumerable.Range(0, Table.Length).GroupBy(row => Number(Table[row][1])))
        {
            for (var seed = 0; seed < Throws; seed++)
            {
                var blades = Blades(canopy.Key);
                var scene = ThrownBlades.Into(
                    new Cell(1, 1),
                    blades,
                    Math.Sqrt(canopy.Key / blades),
                    BladeAngles.Spherical,
                    new Vector3(0, 0, (float)Side),
                    new Vector3(1, 1, Depth),
                    5000 + seed + (int)(100 * canopy.Key)).Scene;
                var geometry = LightGeometry.Build(scene, SkyRings.Spiral(96), LightCases.Quality(0.015, 0.01), 2);
                foreach (var rows in canopy.GroupBy(row => (Number(Table[row][2]), Number(Table[row][3]), Number(Table[row][4]))))
                {
                    var hours = rows.SelectMany(row => Enumerable.Range(0, Azimuths).Select(turn => Hour(Number(Table[row][5]), (90 * turn) + (11 * seed))));
                    var solution = geometry.Solve([.. hours], Nir(rows.Key), 2);
                    var first = 0;
                    foreach (var row in rows)
                    {
                        var budgets = solution.NirBudgets.AsSpan(first, Azimuths).ToArray();
                        var direct = solution.GroundSunlitFraction.AsSpan(first, Azimuths).ToArray().Average();
                        solved[row].Add([
                            budgets.Average(budget => budget.Reflected / budget.Incident),
                            budgets.Average(budget => budget.AbsorbedLeaves / budget.Incident),
                            budgets.Average(budget => budget.AbsorbedGround / budget.Incident),
                            Number(Table[row][5]) < 0 ? geometry.SkyGapFraction : direct,
                        ]);
                        first += Azimuths;
                    }
                }
            }
        }

        return solved;
    }

    private static IncidentLight Hour(double zenith, double azimuth) =>
        zenith < 0 ? LightCases.UniformSky() : LightCases.Sun(SkyRings.Direction(zenith == 0 ? NearZenith : zenith, azimuth));

    // PAR is left black: it costs nothing.
    private static Optics Nir((double Reflectance, double Transmittance, double Ground) optics) => LightCases.Black with
    {
        LeafNirReflectance = optics.Reflectance,
        LeafNirTransmittance = optics.Transmittance,
        GroundNirReflectance = optics.Ground,
    };
}
