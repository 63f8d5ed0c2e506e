using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.RayTracing;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>
/// Facets put together from triangles against the triangles one by one, each a surface of its own so that none joins another:
/// fans of three to nine corners, convex, star-shaped or bent, their triangles turned over, of two surfaces, or meeting in a T.
/// </summary>
public class FacetListTests
{
    private const int Fans = 300;

    private enum Fan
    {
        Convex,
        Star,
        Bent,
        NearlyFlat,
        TurnedOver,
        TwoSurfaces,
        SplitSide,
    }

    /// <summary>
    /// Where a rounded edge is extended beyond its end it may lie a few millionths of a pixel off, so that one pixel in a million
    /// may change; facets whose corners lie 10 µm off their plane may lose as much at their rim, a four-hundredth of a pixel.
    /// </summary>
    [Fact]
    public void Facets_cover_the_pixels_of_their_triangles()
    {
        var (covered, different, rims) = (0L, 0L, 0L);
        for (var number = 0; number < Fans; number++)
        {
            var (joined, single) = (Scene(number, apart: false), Scene(number, apart: true));
            foreach (var (zenith, azimuth) in ((double, double)[])[(0, 0), (40, 73), (84, 200)])
            {
                var sun = SkyRings.Direction(zenith, azimuth);
                var (one, many) = (Mask(joined, sun), Mask(single, sun));
                for (var at = 0; at < one.Length; at++)
                {
                    covered += one[at] ? 1 : 0;
                    if (one[at] == many[at]) continue;
                    if (KindOf(number) == Fan.NearlyFlat) rims++;
                    else different++;
                }
            }
        }

        Assert.InRange(covered, 1_000_000, long.MaxValue);
        Assert.InRange(different, 0, covered / 1_000_000);
        Assert.InRange(rims, 0, covered / 100_000);
        TestContext.Current.SendDiagnosticMessage($"pixels covered {covered}, different {different}, of nearly flat ones {rims}");
    }

    [Fact]
    public void Facets_show_the_side_that_their_triangles_show()
    {
        for (var number = 0; number < Fans; number++)
        {
            var (joined, single) = (Scene(number, apart: false), Scene(number, apart: true));
            var sun = SkyRings.Direction(60 * SeededValue.Uniform(3, "sun", number), 360 * SeededValue.Uniform(4, "sun", number));
            var (one, many) = (SunCounts.Of(joined, sun, 0.004).Pixels, SunCounts.Of(single, sun, 0.004).Pixels);
            for (var side = 0; side < 2; side++)
            {
                var (ofFacets, ofTriangles) = (Sum(one, joined, side), Sum(many, single, side));
                Assert.True(Math.Abs(ofFacets - ofTriangles) <= 1, $"fan {number} ({KindOf(number)}), side {side}: {ofFacets} pixels, {ofTriangles} by triangles");
            }
        }

        static long Sum(long[] pixels, Scene scene, int side) => Enumerable.Range(0, scene.SurfaceCount).Sum(surface => pixels[(2 * surface) + side]);
    }

    [Fact]
    public void Facets_are_convex_have_five_corners_at_most_and_the_area_of_their_triangles()
    {
        var byCorners = new int[FacetList.MaximumCorners + 1];
        foreach (var scene in Enumerable.Range(0, Fans).Select(number => Scene(number, apart: false)).Concat(Enumerable.Range(0, 100).Select(number => OddScenes.Of(number))))
        {
            var facets = new FacetList(scene);
            var areas = new double[scene.SurfaceCount];
            for (var facet = 0; facet < facets.Count; facet++)
            {
                var corners = facets.Corners(facet).ToArray().Select(Point3.From).ToArray();
                Assert.InRange(corners.Length, 3, FacetList.MaximumCorners);
                byCorners[corners.Length]++;
                var normal = Enumerable.Range(1, corners.Length - 2).Select(i => Point3.Cross(corners[i] - corners[0], corners[i + 1] - corners[0])).Aggregate((a, b) => a + b);
                areas[facets.Surfaces[facet]] += 0.5 * Math.Sqrt(Point3.Dot(normal, normal));
                if (corners.Length == 3) continue;
                normal = normal.Normalized();
                for (var i = 0; i < corners.Length; i++)
                {
                    var (a, b, c) = (corners[i], corners[(i + 1) % corners.Length], corners[(i + 2) % corners.Length]);

                    // Flat to 10 µm from the first triangle's plane, and no corner turns inward by more than that.
                    Assert.InRange(Point3.Dot(a - corners[0], normal), -2e-5, 2e-5);
                    var edge = b - a;
                    Assert.True(Point3.Dot(Point3.Cross(edge, c - b), normal) >= -1e-5 * Math.Sqrt(Point3.Dot(edge, edge)), $"facet {facet} is not convex");
                }
            }

            var expected = new double[scene.SurfaceCount];
            for (var triangle = 0; triangle < scene.TriangleCount; triangle++) expected[scene.SurfaceOfTriangle[triangle]] += Area(scene.Corners.AsSpan(3 * triangle, 3));
            var mesh = new LightMesh(scene);
            var ofMesh = new double[scene.SurfaceCount];
            for (var place = 0; place < mesh.Count; place++) ofMesh[mesh.Faces[place] / 2] += mesh.Areas[place];
            for (var surface = 0; surface < areas.Length; surface++)
            {
                Assert.Equal(expected[surface], areas[surface], (1e-5 * expected[surface]) + 1e-10);

                // The mesh works in single precision: 2⁻²⁴ of the square of edges of 0.3 m.
                Assert.Equal(expected[surface], ofMesh[surface], (1e-5 * expected[surface]) + 1e-8);
            }
        }

        Assert.True(byCorners[3] > 0 && byCorners[4] > 0 && byCorners[5] > 0, "nothing was put together");
    }

    /// <summary>A folded blade of two flat halves makes two facets, a side of a tube one.</summary>
    [Fact]
    public void Half_a_blade_and_a_side_of_a_tube_are_one_facet()
    {
        var triangles = new TriangleList();
        triangles.Begin(SurfaceKind.Wood);
        triangles.AddTube(new Vector3(0.1f, 0.2f, 0.3f), new Vector3(0.2f, 0.3f, 1.3f), 0.02f, 0.02f, 6);
        Assert.Equal(6, new FacetList(triangles.Build(new Cell(1, 1))).Count);
        var blades = RandomScenes.Hedge(50, 1, new Cell(1, 1), wood: false);
        Assert.Equal(100, new FacetList(blades).Count);
    }

    [Fact]
    public void A_corner_that_is_not_a_number_is_refused()
    {
        foreach (var bad in (float[])[float.NaN, float.PositiveInfinity, float.NegativeInfinity])
        {
            var scenes = new RandomScenes(new Cell(1, 1));
            scenes.AddTriangle(scenes.AddSurface(SurfaceKind.Blade), Vector3.Zero, Vector3.UnitX, new Vector3(0, bad, 1));
            Assert.Throws<ArgumentException>(() => new FacetList(scenes.Build()));
        }
    }

    // Beyond, neighboring rows of fine pixels are one number in single precision.
    [Theory]
    [InlineData(9_999, true)]
    [InlineData(10_001, false)]
    [InlineData(-1e9f, false)]
    public void What_lies_too_far_off_is_refused(float along, bool taken)
    {
        var scenes = new RandomScenes(new Cell(1, 1));
        scenes.AddTriangle(scenes.AddSurface(SurfaceKind.Blade), new Vector3(0, along, 1), new Vector3(1, along, 1), new Vector3(0, along + 0.5f, 1));
        if (taken) Assert.Equal(1, new FacetList(scenes.Build()).Count);
        else Assert.Throws<ArgumentException>(() => new FacetList(scenes.Build()));
    }

    private static Fan KindOf(int number) => (Fan)(number % 7);

    private static double Area(ReadOnlySpan<Vector3> corners)
    {
        var normal = Point3.Cross(Point3.From(corners[1]) - Point3.From(corners[0]), Point3.From(corners[2]) - Point3.From(corners[0]));
        return 0.5 * Math.Sqrt(Point3.Dot(normal, normal));
    }

    // A fan about its first corner, somewhere in the cell.
    private static Scene Scene(int number, bool apart)
    {
        double Value(string purpose, int index = 0) => SeededValue.Uniform(51, purpose, number, index);
        var kind = KindOf(number);
        var corners = 3 + (int)(7 * Value("corners"));
        var (along, aside) = RandomScenes.Frame(Value("height"), Value("azimuth"), Value("turn"));
        var up = Vector3.Cross(along, aside);
        var center = new Vector3((float)Value("x"), (float)Value("y"), 0.5f);
        var rim = new Vector3[corners];
        for (var i = 0; i < corners; i++)
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * (i + (0.4 * Value("angle", i))) / corners);
            var radius = 0.15 * (kind == Fan.Star ? 0.3 + (0.7 * Value("radius", i)) : 1);
            var bend = kind switch { Fan.Bent => 0.05, Fan.NearlyFlat => 8e-6, _ => 0 } * Value("bend", i);
            rim[i] = center + ((float)(radius * cosine) * along) + ((float)(radius * sine) * aside) + ((float)bend * up);
        }

        var scenes = new RandomScenes(new Cell(1, 1));
        var surfaces = new[] { scenes.AddSurface(SurfaceKind.Blade), scenes.AddSurface(SurfaceKind.Blade) };
        void Add(int i, Vector3 a, Vector3 b, Vector3 c)
        {
            var surface = apart ? scenes.AddSurface(SurfaceKind.Blade) : surfaces[kind == Fan.TwoSurfaces ? i % 2 : 0];
            if (kind == Fan.TurnedOver && Value("over", i) < 0.4) scenes.AddTriangle(surface, a, c, b);
            else scenes.AddTriangle(surface, a, b, c);
        }

        // A star is seen whole from its center; others from their first corner.
        if (kind == Fan.Star)
        {
            for (var i = 0; i < corners; i++) Add(i, center, rim[i], rim[(i + 1) % corners]);
            return scenes.Build();
        }

        for (var i = 1; i + 1 < corners; i++)
        {
            if (kind != Fan.SplitSide || i % 2 == 0)
            {
                Add(i, rim[0], rim[i], rim[i + 1]);
                continue;
            }

            // The side towards the next triangle has a corner that the next one has not.
            var middle = 0.5f * (rim[0] + rim[i + 1]);
            Add(i, rim[0], rim[i], middle);
            Add(i, middle, rim[i], rim[i + 1]);
        }

        return scenes.Build();
    }

    private static bool[] Mask(Scene scene, Vector3 sun)
    {
        var scratch = new SunRaster.Scratch();
        var nodes = new LightNodes(scene, 12, 1);
        SunRaster.Draw(scene, new LightMesh(scene), nodes, sun, 0.004, scratch);
        return Array.ConvertAll(scratch.Owners[..ProjectedGrid.For(scene.Cell, sun, 0.004).PixelCount], owner => owner >= 0);
    }
}
