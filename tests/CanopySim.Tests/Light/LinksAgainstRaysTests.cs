using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.RayTracing;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>Links as form factors: the share of a face's links that a partner has, against rays that leave the face by the cosine law.</summary>
public class LinksAgainstRaysTests
{
    /// <summary>
    /// Root mean square difference of form factors to those by rays, the rays' own sampling taken off, at three samplings of
    /// growing fineness: it falls with each, and at the last it is within the rays' noise.
    /// </summary>
    [Fact]
    public void Links_converge_to_form_factors()
    {
        const int Rays = 2_000;
        var samplings = new[] { (Directions: 40, Pixel: 0.03), (Directions: 160, Pixel: 0.015), (Directions: 1280, Pixel: 0.006) };
        var squares = new double[samplings.Length];
        var (noise, pairs, worst) = (0.0, 0, (Off: 0.0, What: ""));
        for (var number = 2; number < 10; number++)
        {
            var scene = OddScenes.Of(number, coplanar: false, throughGround: false);
            var links = samplings.Select(sampling =>
                LightGeometry.Build(scene, SkyRings.Spiral(sampling.Directions), LightCases.Quality(sampling.Pixel, 1), 2)).ToArray();
            var areas = scene.SurfaceAreas();
            for (var face = 0; face < 2 * scene.SurfaceCount; face++)
            {
                // Rays of two thousandths of a square meter tell no more than a few pixels.
                if (links[0].Nodes.IsInside(face) || areas[face / 2] < 2e-3) continue;
                var byRays = RayShares(scene, face, Rays);
                var byLinks = links.Select(geometry => LinkShares(geometry, face)).ToArray();
                foreach (var partner in byRays.Keys.Concat(byLinks[^1].Keys).Distinct())
                {
                    var expected = byRays.GetValueOrDefault(partner);
                    (noise, pairs) = (noise + (expected * (1 - expected) / Rays), pairs + 1);
                    var off = Math.Abs(byLinks[^1].GetValueOrDefault(partner) - expected);
                    if (off > worst.Off) worst = (off, $"scene {number}, face {face} ({areas[face / 2]} m², {scene.Kinds[face / 2]}), partner {partner}: rays {expected}, links {byLinks[^1].GetValueOrDefault(partner)}");
                    for (var i = 0; i < squares.Length; i++) squares[i] += Math.Pow(byLinks[i].GetValueOrDefault(partner) - expected, 2);
                }
            }
        }

        var errors = squares.Select(square => Math.Sqrt(Math.Max(0, square - noise) / pairs)).ToArray();
        TestContext.Current.SendDiagnosticMessage($"pairs {pairs}, errors {string.Join(", ", errors)}, rays {Math.Sqrt(noise / pairs)}, last square {squares[^1] / noise} of theirs, worst {worst.What}");
        Assert.InRange(pairs, 300, int.MaxValue);
        Assert.True(errors[1] < 0.7 * errors[0] && errors[2] < 0.7 * errors[1], string.Join(", ", errors));

        // The sum of squares of rays alone scatters by √(2 / pairs) of itself; a tenth is left to the links.
        Assert.InRange(squares[^1], 0, noise * (1.1 + (4 * Math.Sqrt(2.0 / pairs))));
    }

    /// <summary>What holds to the last line: each pixel brings one link from its sky and one to the ground, and each pair links both ways.</summary>
    [Fact]
    public void Links_add_up_to_pixels()
    {
        for (var number = 0; number < 60; number++)
        {
            var scene = OddScenes.Of(number);
            var directions = SkyRings.Spiral(25);
            var geometry = LightGeometry.Build(scene, directions, LightCases.Quality(0.02, 1), 2);
            var (links, nodes) = (LinkCounts.Of(geometry), geometry.Nodes);
            var pixels = new long[directions.Length];
            foreach (var direction in LinkDirection.All(scene.Cell, directions, 0.02))
                pixels[direction.Index] = ProjectedGrid.For(scene.Cell, direction.Upwards, 0.02).PixelCount;
            var (received, sent, intoBodies) = (new long[nodes.Count], new long[directions.Length], new long[nodes.Count]);
            foreach (var ((receiver, sender), count) in links)
            {
                received[receiver] += count;
                if (sender < 0) sent[LinkCounts.Sky(sender)] += count;
                else if (nodes.IsInside(receiver)) intoBodies[sender] += count;
                else Assert.Equal(count, links[(sender, receiver)]);
            }

            Assert.Equal(pixels, sent);
            Assert.Equal(pixels.Sum(), Enumerable.Range(nodes.FirstGround, nodes.GroundStrips).Sum(node => (long)geometry.Matrix.LinksOfNode[node]));
            for (var node = 0; node < nodes.Count; node++)
            {
                // What an outer face sends into a body comes back from nobody, but counts as the face's own.
                if (!nodes.IsInside(node)) Assert.Equal((long)geometry.Matrix.LinksOfNode[node], received[node] + intoBodies[node]);
            }
        }
    }

    /// <summary>
    /// A face's lines times the power of one make its area, as the cosine over a hemisphere integrates to π: the sampling of 400
    /// directions leaves 0.3 %, and a pixel at the rim is there or not, with a variance of 1/4; on small surfaces all pixels are at the rim.
    /// </summary>
    [Fact]
    public void Links_of_a_face_make_its_area()
    {
        var (chi, faces) = (0.0, 0);
        for (var number = 1; number < 40; number++)
        {
            var scene = OddScenes.Of(number, throughGround: false);
            var geometry = LightGeometry.Build(scene, SkyRings.Spiral(400), LightCases.Quality(0.01, 1), 2);
            var areas = scene.SurfaceAreas();
            for (var face = 0; face < 2 * scene.SurfaceCount; face++)
            {
                var area = areas[face / 2];
                if (area < 1e-3) continue;
                var found = geometry.Matrix.LinksOfNode[face] * geometry.Sky.LinkPower;

                // Two sides share their lines: a closed body's as well, the far side of each line being its inside.
                var error = area * Math.Sqrt(Math.Pow(0.003, 2) + (0.25 / geometry.Matrix.LinksOfNode[face]));
                Assert.True(Math.Abs(found - area) < 4 * error, $"scene {number}, face {face}: {found} of {area} m²");
                (chi, faces) = (chi + Math.Pow((found - area) / error, 2), faces + 1);
            }
        }

        TestContext.Current.SendDiagnosticMessage($"faces {faces}, mean square {chi / faces}");
        Assert.InRange(faces, 200, int.MaxValue);
        Assert.InRange(chi / faces, 0, 1 + (4 * Math.Sqrt(2.0 / faces)));
    }

    // Partners: faces, the ground as one, and the sky as one. A ray that points into the hillside meets the ground far away.
    private static Dictionary<int, double> RayShares(Scene scene, int face, int rays)
    {
        var (tracer, points, shares) = (new PeriodicRayTracer(scene), new SurfacePoints(scene, face / 2), new Dictionary<int, double>());
        for (var ray = 0; ray < rays; ray++)
        {
            var (place, triangle) = points.At(ray);
            var normal = (face % 2 == 0 ? 1 : -1) * points.Normal(triangle);
            var direction = Hemisphere.Cosine(normal, SeededValue.Uniform(6, "height", face, ray), SeededValue.Uniform(6, "turn", face, ray));
            var hit = tracer.Closest(new Ray(place, direction), triangle);
            var rise = OddScenes.Rise(new Vector3((float)direction.X, (float)direction.Y, (float)direction.Z), scene.Cell);
            var partner = hit is { } met ? (2 * scene.SurfaceOfTriangle[met.Triangle]) + (met.UpperSide ? 0 : 1) : rise > 0 ? -1 : -2;
            shares[partner] = shares.GetValueOrDefault(partner) + (1.0 / rays);
        }

        return shares;
    }

    private static Dictionary<int, double> LinkShares(LightGeometry geometry, int face)
    {
        var (matrix, nodes, shares) = (geometry.Matrix, geometry.Nodes, new Dictionary<int, double>());
        for (var at = matrix.Starts[face]; at < matrix.Starts[face + 1]; at++)
        {
            var partner = matrix.Senders[at] >= nodes.FirstGround ? -2 : matrix.Senders[at];
            shares[partner] = shares.GetValueOrDefault(partner) + (matrix.Counts[at] / matrix.LinksOfNode[face]);
        }

        // The insides of bodies are not among the senders, but receive from what sticks in them.
        for (var inside = 1; inside < nodes.FirstGround; inside += 2)
        {
            if (!nodes.IsInside(inside)) continue;
            for (var at = matrix.Starts[inside]; at < matrix.Starts[inside + 1]; at++)
                if (matrix.Senders[at] == face) shares[inside] = matrix.Counts[at] / matrix.LinksOfNode[face];
        }

        if (matrix.SkyLinksOfNode[face] > 0) shares[-1] = matrix.SkyLinksOfNode[face] / matrix.LinksOfNode[face];
        return shares;
    }
}
