using CanopySim.Geometry;
using CanopySim.RayTracing;
using CanopySim.Tests.Light;
using CanopySim.Tests.Plants;
using CanopySim.Tests.RayTracing.Embree;
using Xunit;

namespace CanopySim.Tests.RayTracing;

/// <summary>
/// The fast tree beside Embree, a tracer by others, in dense canopies: rays to the sun, straight up and over the hemispheres of
/// leaves, each excepting the triangle that it starts on. Embree is asked one ray at a time, with its robust tests, so that its own
/// rims are as tight as it can make them.
/// </summary>
public class EmbreeAgreementTests
{
    private const int RaysOfSet = 200_000;

    // Distances agree to this [m], or the difference is counted.
    private const double DistanceTolerance = 1e-5;

    // Of all rays. Measured: see the messages; both tracers work in single precision, and rims of 30,000 triangles are met by chance.
    private const double HitShare = 1e-4;
    private const double TriangleShare = 1e-3;

    private readonly ITestOutputHelper _output;

    public EmbreeAgreementTests(ITestOutputHelper output) => _output = output;

    [Fact]
    public void A_million_rays_hit_or_miss_as_Embree_has_it()
    {
        var folder = Directory.CreateTempSubdirectory("canopysim-embree");
        try
        {
            var source = Path.Combine(AppContext.BaseDirectory, "embree", "embree_rays.cpp");
            var program = EmbreeWitness.Build(source, folder.FullName, out var problem);
            Assert.SkipWhen(program is null && EmbreeWitness.IsMissing(problem), "needs the Debian packages g++ and libembree-dev");
            Assert.True(program is not null, problem);
            var tally = new Tally();

            // A hedge of thrown leaves, and a grown canopy with shoots, petioles and clusters, thin tubes among them.
            Compare(program, RandomScenes.Hedge(1200, 8, new Cell(2.4, 1.5)), tally);
            var grown = new GrownCanopy(GrownCanopy.Scenario(vines: 3)).Grow(70).Set();
            var canopy = new CanopyScene(GrownCanopy.Scenario(vines: 3)).Place(grown.Canopy, SceneDetail.Drawn);
            Assert.InRange(canopy.Leaves.Count(leaf => leaf is not null), 900, 2500);
            Compare(program, canopy.Scene, tally);
            _output.WriteLine(tally.ToString());

            Assert.True(tally.Rays >= 1_000_000);
            Assert.InRange(tally.Hits, 0.3 * tally.Rays, 0.95 * tally.Rays);
            Assert.True(tally.HitDiffers <= HitShare * tally.Rays, tally.ToString());
            Assert.True(tally.DistanceDiffers <= HitShare * tally.Rays, tally.ToString());
            Assert.True(tally.TriangleDiffers <= TriangleShare * tally.Rays, tally.ToString());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Compare(string program, Scene scene, Tally tally)
    {
        var rays = new CanopyRays(scene, RaysOfSet);
        GivenRay[][] sets = [rays.ToSun(), rays.Overhead(), rays.Hemisphere()];
        var hierarchy = new WideHierarchy(scene.Corners);
        using var embree = new EmbreeWitness(program, scene.Corners, sets, "high", "rf");
        for (var set = 0; set < sets.Length; set++)
        {
            var (blocked, closest) = (embree.OccludedExcept(set), embree.ClosestExcept(set));
            for (var ray = 0; ray < sets[set].Length; ray++)
            {
                var (origin, direction, limit, except) = sets[set][ray];
                var own = hierarchy.Closest(origin, direction, limit, except);
                tally.Rays++;
                if (own is not null) tally.Hits++;
                if (hierarchy.IsBlocked(origin, direction, limit, except) != blocked[ray] || own is not null != (closest[ray].Triangle >= 0)) tally.HitDiffers++;
                else if (own is { } hit)
                {
                    var distance = Math.Abs(hit.Distance - closest[ray].Distance);
                    if (distance > DistanceTolerance) tally.DistanceDiffers++;
                    else tally.Largest = Math.Max(tally.Largest, distance);
                    if (hit.Triangle != closest[ray].Triangle) tally.TriangleDiffers++;
                }
            }
        }
    }

    private sealed class Tally
    {
        public int Rays { get; set; }

        public int Hits { get; set; }

        public int HitDiffers { get; set; }

        public int DistanceDiffers { get; set; }

        public int TriangleDiffers { get; set; }

        public double Largest { get; set; }

        public override string ToString() =>
            $"{Rays} rays, {Hits} hits; hit or miss differs for {HitDiffers}, distance by more than {DistanceTolerance} m for {DistanceDiffers} (the rest by {Largest:0.0e0} m at most), triangle for {TriangleDiffers}";
    }
}
