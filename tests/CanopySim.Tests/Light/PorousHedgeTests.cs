using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using Xunit;
using static CanopySim.Tests.Sky.ReferenceTable;

namespace CanopySim.Tests.Light;

/// <summary>
/// Rows of hedges with rectangular sections, opaque and filled with random black blades of spherical inclination:
/// <c>hedgerow_interception.csv</c>, all rows, and <c>hedgerow_diffuse.csv</c>, the project's reference tables, worked out
/// independently: plain geometry for the opaque hedge, the mean over the ground of exp(−G · density · path) for the porous one.
/// </summary>
public class PorousHedgeTests
{
    private const double Along = 1;
    private const double Side = 0.05;
    private const int Throws = 10;
    private const double Pixel = 0.008;
    private const float Base = 0.1f;

    private readonly record struct Hedge(double Width, double Height, double Spacing, double LeafAreaIndex);

    public static TheoryData<double, double, double, double> Hedges =>
        [.. Rows().Select(row => (row.Hedge.Width, row.Hedge.Height, row.Hedge.Spacing, row.Hedge.LeafAreaIndex)).Distinct()];

    public static TheoryData<string> DiffuseRows => [.. Read("Light", "hedgerow_diffuse.csv").Select(row => string.Join(',', row))];

    [Theory]
    [MemberData(nameof(Hedges))]
    public void A_hedge_of_blades_takes_what_the_table_says(double width, double height, double spacing, double leafAreaIndex)
    {
        var hedge = new Hedge(width, height, spacing, leafAreaIndex);
        var rows = Rows().Where(row => row.Hedge == hedge).ToList();
        var blades = (int)Math.Round(leafAreaIndex * spacing * Along / (Side * Side));
        var side = Math.Sqrt(leafAreaIndex * spacing * Along / blades);
        var taken = rows.Select(_ => new List<double>()).ToArray();
        for (var seed = 0; seed < Throws; seed++)
        {
            var thrown = ThrownBlades.Into(
                new Cell(spacing, Along),
                blades,
                side,
                BladeAngles.Spherical,
                new Vector3(0.3f, 0, Base),
                new Vector3((float)width, (float)Along, (float)height),
                seed + (int)(1e4 * (width + leafAreaIndex)));

            // Four suns that are each other's mirror images in the row.
            var suns = rows.SelectMany(row => new[] { 90, 270 }.SelectMany(row90 => new[] { -1, 1 }
                .Select(sign => LightCases.Sun(SkyRings.Direction(row.Zenith, row90 + (sign * row.AzimuthFromRow)))))).ToList();
            var sunlit = LightGeometry.Build(thrown.Scene, [Vector3.UnitZ], LightCases.Quality(0.05, Pixel), 2)
                .Solve(suns, LightCases.Black, 2).GroundSunlitFraction;
            for (var row = 0; row < rows.Count; row++) taken[row].Add(1 - sunlit.AsSpan(4 * row, 4).ToArray().Average());
        }

        for (var row = 0; row < rows.Count; row++)
        {
            var table = rows[row].Porous;
            var model = new HedgeOfBlades(width, height, spacing, Along, blades, side, rows[row].Zenith, rows[row].AzimuthFromRow);
            Assert.Equal(table, 1 - model.TransmittedInTheLimit(), 1.0 / HedgeOfBlades.Bins);
            var expected = 1 - model.Transmitted();
            var found = Estimate.Of(taken[row]);
            Assert.True(
                Math.Abs(found.Mean - expected) < (4 * found.StandardError) + (1.0 / HedgeOfBlades.Bins),
                $"{rows[row]}: {found.Mean} ± {found.StandardError}, for blades of this size {expected}, table {table}");
        }
    }

    [Theory]
    [MemberData(nameof(Hedges))]
    public void An_opaque_hedge_takes_what_the_table_says(double width, double height, double spacing, double leafAreaIndex)
    {
        var rows = Rows().Where(row => row.Hedge == new Hedge(width, height, spacing, leafAreaIndex)).ToList();
        var suns = rows.Select(row => LightCases.Sun(SkyRings.Direction(row.Zenith, 90 - row.AzimuthFromRow))).ToList();
        var sunlit = LightGeometry.Build(Box(width, height, spacing), [Vector3.UnitZ], LightCases.Quality(0.05, 0.003), 2)
            .Solve(suns, LightCases.Black, 2).GroundSunlitFraction;

        // Each edge of the shadow may gain or lose half a column; columns across the row are stretched by 1 / cos z at most, 1.3 besides.
        for (var row = 0; row < rows.Count; row++)
            Assert.Equal(rows[row].Opaque, 1 - sunlit[row], 5.1e-7 + (1.3 * 0.003 / Math.Cos(rows[row].Zenith * Math.PI / 180) / spacing));
    }

    [Theory]
    [MemberData(nameof(DiffuseRows))]
    public void An_opaque_hedge_takes_its_share_of_the_sky(string row)
    {
        var cells = row.Split(',').Select(Number).ToArray();
        var (width, height, spacing) = (cells[0], cells[1], cells[2]);
        var directions = SkyRings.Spiral(200);
        double[] overcast = [.. directions.Select(direction => (1 + (2.0 * direction.Z)) / 3)];
        var geometry = LightGeometry.Build(Box(width, height, spacing), directions, LightCases.Quality(0.01, 0.05), 2);
        var budgets = geometry.Solve([LightCases.UniformSky(), LightCases.UniformSky() with { SkyRadiance = overcast }], LightCases.Black, 2).ParBudgets;
        Check(cells[4], _ => 1, budgets[0]);
        Check(cells[5], direction => 1 + (2 * direction.Z), budgets[1]);
        Assert.Equal((1 - (width / spacing)) * cells[6], geometry.SkyGapFraction, 0.002);

        void Check(double table, Func<Vector3, double> radiance, LightBudget budget)
        {
            // What the directions make of the table's integral is worked out here; pixels at the shadow's two edges fall either way, each
            // by less than one column: over the directions, whose sample points differ, four standard errors of that.
            var (taken, all, squares) = (0.0, 0.0, 0.0);
            foreach (var direction in directions)
            {
                var weight = radiance(direction) * direction.Z;
                var opaque = Math.Min(1, (width + (height * Math.Abs(direction.X / direction.Z))) / spacing);
                (taken, all) = (taken + (weight * opaque), all + weight);
                if (opaque < 1) squares += Math.Pow(weight * 0.01 / direction.Z / spacing, 2) / 6;
            }

            Assert.Equal(table, taken / all, 0.002);
            Assert.Equal(taken / all, budget.AbsorbedWood / budget.IncidentDiffuse, 4 * Math.Sqrt(squares) / all);
        }
    }

    private static Scene Box(double width, double height, double spacing)
    {
        var scenes = new RandomScenes(new Cell(spacing, Along));
        scenes.AddBox(SurfaceKind.Wood, new Vector3(0.3f, 0, 0), new Vector3((float)width, (float)Along, (float)height));
        return scenes.Build();
    }

    private static List<(Hedge Hedge, double Zenith, double AzimuthFromRow, double Opaque, double Porous)> Rows() =>
        [.. Read("Light", "hedgerow_interception.csv").Select(row => row.Select(Number).ToArray())
            .Select(cells => (new Hedge(cells[0], cells[1], cells[2], cells[5]), cells[3], cells[4], cells[8], cells[9]))];
}

/// <summary>
/// Light through a hedge of N blades of a size, by probability alone. A blade's center lies at w U + H tan z |sin az| U' across the row
/// once projected onto the ground, which has the density of a trapezoid; its projected square adds e1 (a − 1/2) + e2 (b − 1/2), U, U',
/// a and b even between 0 and 1. With q(x) the chance that a blade covers a point of the ground, the gap there is (1 − q(x))^N.
/// Without the blade's extent and with exp(−N q) it is the table's own formula.
/// </summary>
internal sealed class HedgeOfBlades
{
    public const int Bins = 5000;

    private const int Samples = 100_000;

    // Edges of blades and a place on each, from its center.
    private static readonly Lazy<(Vector3 First, Vector3 Second, double A, double B)[]> Places = new(() =>
        [.. Enumerable.Range(0, Samples).Select(sample =>
        {
            double Value(string purpose) => SeededValue.Uniform(71, purpose, sample);
            var (first, second) = ThrownBlades.Edges(BladeAngles.Spherical, (sample + 0.5) / Samples, Value("azimuth"), Value("turn"));
            return (first, second, Value("a") - 0.5, Value("b") - 0.5);
        })]);

    private readonly double _blades;
    private readonly double[] _centers = new double[Bins];
    private readonly double[] _covered = new double[Bins];
    private readonly double _meanCover;

    public HedgeOfBlades(
        double width, double height, double spacing, double along, int blades, double side, double zenith, double azimuthFromRow)
    {
        _blades = blades;
        _meanCover = 0.5 * side * side / Math.Cos(zenith * Math.PI / 180) / (spacing * along);
        var slide = height * Math.Tan(zenith * Math.PI / 180) * Math.Abs(Math.Sin(azimuthFromRow * Math.PI / 180));
        var (shorter, longer) = (Math.Min(width, slide), Math.Max(width, slide));

        // Share of the trapezoid below x: integral of its cumulated density, by halves of its ramps.
        double Below(double x)
        {
            double Ramp(double t) => t <= 0 ? 0 : t * t / 2;
            if (shorter < 1e-9) return Math.Clamp(x / longer, 0, 1);
            return (Ramp(x) - Ramp(x - shorter) - Ramp(x - longer) + Ramp(x - shorter - longer)) / (shorter * longer);
        }

        var bin = spacing / Bins;
        for (var at = 0; at * bin < shorter + longer; at++)
            _centers[at % Bins] += (Below((at + 1) * bin) - Below(at * bin)) * Bins;

        // Spread of the projected blade across the row, weighted with its shadow.
        var sun = SkyRings.Direction(zenith, 90 - azimuthFromRow);
        var spread = new double[Bins];
        var sum = 0.0;
        foreach (var (first, second, a, b) in Places.Value)
        {
            var shadow = Math.Abs(Vector3.Dot(Vector3.Cross(first, second), sun));
            double Across(Vector3 edge) => side * (edge.X - (edge.Z * sun.X / sun.Z));
            var offset = (Across(first) * a) + (Across(second) * b);
            spread[(((int)Math.Round(offset / bin) % Bins) + Bins) % Bins] += shadow;
            sum += shadow;
        }

        for (var by = 0; by < Bins; by++)
        {
            if (spread[by] == 0) continue;
            for (var at = 0; at < Bins; at++) _covered[(at + by) % Bins] += _centers[at] * spread[by] / sum;
        }
    }

    public double Transmitted() => _covered.Average(cover => Math.Pow(1 - (_meanCover * cover), _blades));

    public double TransmittedInTheLimit() => _centers.Average(cover => Math.Exp(-_blades * _meanCover * cover));
}
