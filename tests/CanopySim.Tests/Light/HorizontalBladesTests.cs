using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using Xunit;
using static CanopySim.Tests.Sky.ReferenceTable;

namespace CanopySim.Tests.Light;

/// <summary>
/// Endless canopies of horizontal leaves that reflect as much as they let through, σ in all, reflect ρ = (1 − √(1 − σ)) / (1 + √(1 − σ)) of
/// any light: exact, since every direction has the extinction 1 (Goudriaan 1977; Kubelka &amp; Munk 1931). <c>goudriaan_reflection.csv</c>,
/// the project's reference table, second column, and the last, √(1 − σ): how fast the light falls with leaf area. The columns between are
/// approximations for slanted leaves. Ground that
/// reflects ρ itself continues the canopy, so a leaf area index of 3 is endless.
/// </summary>
public class HorizontalBladesTests
{
    private const double Side = 0.06;
    private const double LeafAreaIndex = 3;
    private const float Depth = 30;
    private const int Throws = 6;

    private static readonly Lazy<LightGeometry[]> Canopies = new(() => [.. Enumerable.Range(0, Throws).Select(seed =>
    {
        var blades = (int)Math.Round(LeafAreaIndex / (Side * Side));
        var scene = ThrownBlades.Into(
            new Cell(1, 1), blades, Side, BladeAngles.Horizontal, new Vector3(0, 0, (float)Side), new Vector3(1, 1, Depth), 7000 + seed).Scene;
        return LightGeometry.Build(scene, SkyRings.Spiral(96), LightCases.Quality(0.015, 0.01), 2);
    })]);

    public static TheoryData<double, double> Rows => [.. Read("Light", "goudriaan_reflection.csv").Select(row => (Number(row[0]), Number(row[1])))];

    public static TheoryData<double, double, double> Decays =>
        [.. Read("Light", "goudriaan_reflection.csv").Select(row => (Number(row[0]), Number(row[1]), Number(row[5])))];

    // Downward light falls as exp(−√(1 − σ) L) over ground that reflects ρ, which absorbs 1 − ρ of it. The blades are N layers that each cover
    // p of the cell: a layer lets 1 − p + p σ / 2 through and reflects p σ / 2, and N of them are added up from the ground.
    [Theory]
    [MemberData(nameof(Decays))]
    public void Light_falls_with_leaf_area_as_the_closed_form_says(double scattered, double reflection, double decay)
    {
        var optics = LightCases.Black with
        {
            LeafNirReflectance = scattered / 2,
            LeafNirTransmittance = scattered / 2,
            GroundNirReflectance = reflection,
        };
        var blades = (int)Math.Round(LeafAreaIndex / (Side * Side));
        var cover = Side * Side;
        var (below, through) = (reflection, 1.0);
        for (var layer = 0; layer < blades; layer++)
        {
            var (reflected, passed) = (cover * scattered / 2, 1 - cover + (cover * scattered / 2));
            var echo = 1 / (1 - (reflected * below));
            (through, below) = (through * passed * echo, reflected + (passed * passed * below * echo));
        }

        // Layers of cover p stand for endlessly thin ones to within p L.
        Assert.Equal(Math.Exp(-decay * blades * cover), through, cover * LeafAreaIndex * through);
        IncidentLight[] hours = [LightCases.UniformSky(), LightCases.Sun(SkyRings.Direction(10, 20)), LightCases.Sun(SkyRings.Direction(65, 250))];
        var budgets = Canopies.Value.Select(canopy => canopy.Solve(hours, optics, 2).NirBudgets).ToList();
        var shortFlights = scattered * Side * Math.Sqrt(2) * LeafAreaIndex / Depth;
        for (var hour = 0; hour < hours.Length; hour++)
        {
            var found = Estimate.Of([.. budgets.Select(budget => budget[hour].AbsorbedGround / budget[hour].Incident)]);
            Assert.True(
                Math.Abs(found.Mean - ((1 - reflection) * through)) < (4 * found.StandardError) + shortFlights,
                $"hour {hour}: {found.Mean} ± {found.StandardError}, expected {(1 - reflection) * through}");
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Reflect_what_the_closed_form_says(double scattered, double reflection)
    {
        var optics = LightCases.Black with
        {
            LeafNirReflectance = scattered / 2,
            LeafNirTransmittance = scattered / 2,
            GroundNirReflectance = reflection,
        };

        // Whatever the light: three suns and the sky must all give ρ.
        IncidentLight[] hours =
        [
            LightCases.UniformSky(),
            LightCases.Sun(SkyRings.Direction(10, 20)),
            LightCases.Sun(SkyRings.Direction(45, 100)),
            LightCases.Sun(SkyRings.Direction(65, 250)),
        ];
        var budgets = Canopies.Value.Select(canopy => canopy.Solve(hours, optics, 2).NirBudgets).ToList();

        // As for canopies of slanted leaves: flights shorter than a leaf's diagonal are all that can go astray of what is scattered.
        var shortFlights = scattered * Side * Math.Sqrt(2) * LeafAreaIndex / Depth;
        for (var hour = 0; hour < hours.Length; hour++)
        {
            var found = Estimate.Of([.. budgets.Select(budget => budget[hour].Reflected / budget[hour].Incident)]);
            Assert.True(
                Math.Abs(found.Mean - reflection) < (4 * found.StandardError) + shortFlights + 5.1e-7,
                $"hour {hour}: {found.Mean} ± {found.StandardError}, expected {reflection}");
        }
    }
}
