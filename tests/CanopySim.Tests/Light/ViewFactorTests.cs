using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using Xunit;
using static CanopySim.Tests.Sky.ReferenceTable;

namespace CanopySim.Tests.Light;

/// <summary>
/// View factors F of rectangles, all rows of <c>view_factors.csv</c>: the project's reference table of closed forms (Howell, A Catalog
/// of Radiation Configuration Factors, C-11, C-14; Hottel's crossed strings). A rectangle's upper side sees the sky but for F, over black
/// ground its lower side sees nothing: under a uniform sky it takes 1 − F. Directions and places are drawn anew in every turn.
/// </summary>
public class ViewFactorTests
{
    private const int Spread = 377;
    private const int Turns = 8;
    private const int Directions = 100;
    private const double Pixels = 20_000;

    // The longest edge [m]; the rest follows from the row.
    private const double Longest = 1;

    public static TheoryData<string, double, double, double> Rows =>
        [.. Read("Light", "view_factors.csv").Select(row =>
            (row[0].Split(' ')[0], Number(row[1]), row[2].Length > 0 ? Number(row[2]) : 0, Number(row[3])))];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Rectangles_hide_their_view_factor_of_the_sky(string geometry, double p1, double p2, double viewFactor)
    {
        var (lower, other, cell, copies) = Case(geometry, p1, p2);
        var pixel = Math.Sqrt(cell.GroundArea / Pixels);
        var hidden = new List<double>();
        for (var turn = 0; turn < Turns; turn++)
        {
            double Value(string purpose) => SeededValue.Uniform(91, purpose, turn, (int)(1e6 * viewFactor));
            var (cosine, sine) = geometry == "infinite_parallel_strips" ? (1, 0) : (Math.Cos(6.28 * Value("turn")), Math.Sin(6.28 * Value("turn")));
            Vector3 Turned(Vector3 v) => new((float)((cosine * v.X) - (sine * v.Y)), (float)((sine * v.X) + (cosine * v.Y)), v.Z);
            var place = new Vector3((float)(cell.Across * Value("x")), (float)(cell.Along * Value("y")), 0.1f);
            var scenes = new RandomScenes(cell);
            foreach (var (corner, first, second) in new[] { lower, other })
                scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), place + Turned(corner), Turned(first), Turned(second));

            // Heights evenly spaced from a random start: equal solid angles, and no error of a fixed grid.
            var start = Value("start");
            Vector3[] directions = [.. Enumerable.Range(0, Directions).Select(index =>
                SkyRings.Direction(Math.Acos((index + start) / Directions) * 180 / Math.PI, (index * 137.50776) + (360 * Value("azimuth"))))];
            var light = LightGeometry.Build(scenes.Build(), directions, LightCases.Quality(pixel, pixel), 2)
                .Solve([LightCases.UniformSky()], LightCases.Black, 2);
            hidden.Add(1 - (light.AbsorbedPar[0] / Vector3.Cross(lower.First, lower.Second).Length()));
        }

        var found = Estimate.Of(hidden);
        Assert.True(
            Math.Abs(found.Mean - viewFactor - (copies / 2)) < (4 * found.StandardError) + (copies / 2) + 5.1e-7,
            $"hidden {found.Mean} ± {found.StandardError}, view factor {viewFactor}, copies {copies}");
    }

    /// <summary>
    /// The same through links: of all that meets the lower rectangle's upper side, those that end on the other rectangle. What the directions
    /// make of the view factor is worked out from the shadow of one rectangle on the other; pixels may miss that by their own error,
    /// and the directions the view factor by theirs. Links have no direction: both rectangles count the same.
    /// </summary>
    [Theory]
    [MemberData(nameof(Rows))]
    public void Links_between_rectangles_make_up_their_view_factor(string geometry, double p1, double p2, double viewFactor)
    {
        var (lower, other, cell, copies) = Case(geometry, p1, p2);
        var pixel = Math.Sqrt(cell.GroundArea / Pixels);
        var strips = geometry == "infinite_parallel_strips";
        var (sine, cosine) = strips ? (0, 1) : Math.SinCos(0.5);
        var directions = SkyRings.Spiral(Spread);
        Vector3[] turned = [.. directions.Select(Turned)];
        var scenes = new RandomScenes(cell);
        foreach (var (corner, first, second) in new[] { lower, other })
        {
            scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), new Vector3(0.2f, 0.1f, 0.1f) + Turned(corner), Turned(first), Turned(second));
        }

        Vector3 Turned(Vector3 v) => new((float)((cosine * v.X) - (sine * v.Y)), (float)((sine * v.X) + (cosine * v.Y)), v.Z);
        var matrix = LightGeometry.Build(scenes.Build(), turned, LightCases.Quality(pixel, pixel), 2).Matrix;
        double Links(int receiver, int sender) => Enumerable.Range(matrix.Starts[receiver], matrix.Starts[receiver + 1] - matrix.Starts[receiver])
            .Where(at => matrix.Senders[at] == sender).Sum(at => (double)matrix.Counts[at]);

        // Faces 0 and 1 are the lower rectangle's, 2 and 3 the other's: the upper one's underside, the wall's side that looks along the floor.
        var facing = geometry == "perpendicular_rect_common_edge" ? 2 : 3;
        var links = Links(0, facing);
        Assert.Equal(links, Links(facing, 0));
        Assert.Equal(0, Links(1, facing));

        var (length, width) = (lower.First.Length(), lower.Second.Length());
        var (shadow, whole) = (0.0, 0.0);
        foreach (var direction in directions)
        {
            shadow += direction.Z * Shadow(geometry, direction, length, width, other.Corner.Z + other.Second.Z, cell);
            whole += direction.Z * length * width;
        }

        // A figure of perimeter P counted by a grid of pixels thrown at random misses its area by √(0.0724 P pixel³) (Gundersen & Jensen 1987,
        // J Microscopy 147:229-263, from memory); here pixels are up to 1.3 times longer one way. Edges along the grid may win or lose a row each.
        var perimeter = 2 * (length + width) * 1.3;
        var missed = strips ? width * pixel / Math.Sqrt(6) : Math.Sqrt(0.0724 * perimeter * Math.Pow(pixel, 3));
        var byPixels = Math.Sqrt(Spread) * missed / whole;
        Assert.Equal(shadow / whole, links / matrix.LinksOfNode[0], (4 * byPixels) + copies);
        Assert.Equal(viewFactor, shadow / whole, 5.1e-7 + DirectionError);

        // A1 F12 = A2 F21, the other rectangle's sight being half of what the directions from both hemispheres bring.
        var area = other.First.Length() * other.Second.Length();
        var seen = matrix.LinksOfNode[2] + matrix.LinksOfNode[3];
        var back = (4 * byPixels) + copies + (2 * DirectionError);
        Assert.Equal(viewFactor * length * width / area, links / (seen / 2), back * length * width / area);
        Assert.Equal(matrix.LinksOfNode[2], matrix.LinksOfNode[3]);
    }

    // Over spread directions the shadow is continuous with kinks, and its sum is wrong by less than 1 / count: measured 0.42 / count.
    private const double DirectionError = 0.5 / Spread;

    // Area of the lower rectangle that the other one covers seen along a direction, copies too where they are apart.
    private static double Shadow(string geometry, Vector3 direction, double length, double width, double height, Cell cell)
    {
        var (shiftX, shiftY) = (height * direction.X / direction.Z, height * direction.Y / direction.Z);
        switch (geometry)
        {
            case "perpendicular_rect_common_edge":
                // The wall's shadow is a parallelogram on the common edge: over x of the floor it has moved by x times the slant.
                var reach = Math.Min(length, -shiftX);
                if (reach <= 0) return 0;
                var slant = Math.Abs(shiftY / shiftX);
                reach = Math.Min(reach, width / slant);
                return (width * reach) - (slant * reach * reach / 2);
            case "infinite_parallel_strips":
                var offset = Math.Abs(shiftX) % cell.Across;
                return width * (Math.Max(0, length - offset) + Math.Max(0, length - (cell.Across - offset)));
            default:
                return Math.Max(0, length - Math.Abs(shiftX)) * Math.Max(0, width - Math.Abs(shiftY));
        }
    }

    private static (Quad Lower, Quad Other, Cell Cell, double Copies) Case(string geometry, double p1, double p2) => geometry switch
    {
        "parallel_aligned_rectangles" => Parallel(p1, p2),
        "infinite_parallel_strips" => Strips(p1),
        "perpendicular_rect_common_edge" => Perpendicular(p1, p2),
        _ => throw new ArgumentOutOfRangeException(nameof(geometry), geometry, "unknown row"),
    };

    private readonly record struct Quad(Vector3 Corner, Vector3 First, Vector3 Second);

    // Other copies of the upper rectangle hide at most A h² / (π r⁴) each at the height h and distance r; Σ 1 / |n|⁴ over a square
    // lattice is 6.03. The cell is as wide as keeps them below a bound.
    private static (Quad Lower, Quad Upper, Cell Cell, double Copies) Parallel(double x, double y)
    {
        const double Copies = 2e-4;
        var gap = Longest / Math.Max(1, Math.Max(x, y));
        var (first, second) = (new Vector3((float)(x * gap), 0, 0), new Vector3(0, (float)(y * gap), 0));
        var cell = (gap * Math.Sqrt((x * x) + (y * y))) + (gap * Math.Pow(6.03 * x * y / (Math.PI * Copies), 0.25));
        return (new Quad(default, first, second), new Quad(new Vector3(0, 0, (float)gap), first, second), new Cell(cell, cell), Copies);
    }

    // Strips as long as the cell join their copies; those beside them hide what crossed strings say, at offsets of n cells.
    private static (Quad Lower, Quad Upper, Cell Cell, double Copies) Strips(double widthPerGap)
    {
        var cell = new Cell(12, 0.5);
        var gap = Longest / Math.Max(1, widthPerGap);
        var width = widthPerGap * gap;
        var (first, second) = (new Vector3((float)width, 0, 0), new Vector3(0, (float)cell.Along, 0));
        double String(double offset) => Math.Sqrt((offset * offset) + (gap * gap));
        var copies = Enumerable.Range(1, 100).Select(n => n * cell.Across)
            .Sum(offset => (String(offset + width) + String(offset - width) - (2 * String(offset))) / width);
        return (new Quad(default, first, second), new Quad(new Vector3(0, 0, (float)gap), first, second), cell, copies);
    }

    // Copies of the wall, of height h, hide at most A (h / 2) / (π r³) each; Σ 1 / |n|³ over a square lattice is 9.03.
    private static (Quad Floor, Quad Wall, Cell Cell, double Copies) Perpendicular(double heightPerEdge, double widthPerEdge)
    {
        const double Copies = 8e-4;
        var edge = Longest / Math.Max(1, Math.Max(heightPerEdge, widthPerEdge));
        var (height, width) = (heightPerEdge * edge, widthPerEdge * edge);
        var along = new Vector3(0, (float)edge, 0);
        var cell = Math.Sqrt((edge * edge) + (width * width)) + Math.Cbrt(9.03 * height * edge * (height / 2) / (Math.PI * Copies));
        var floor = new Quad(default, new Vector3((float)width, 0, 0), along);
        return (floor, new Quad(default, along, new Vector3(0, 0, (float)height)), new Cell(cell, cell), Copies);
    }
}
