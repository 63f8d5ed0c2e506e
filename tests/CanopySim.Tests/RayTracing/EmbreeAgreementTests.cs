using System.Numerics;
using System.Runtime.InteropServices;
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

    // Distances of the same hit agree to this [m].
    private const double DistanceTolerance = 1e-5;

    // Nearer to a triangle's rim than this [m] a ray's answer is open in single precision, whose coordinates of 2 m are known to 1e-7 m.
    private const double Rounding = 2e-6;

    // A ray flatter to a triangle than this sine knows the distance ten times worse than it knows coordinates, or less.
    private const double GrazingSine = 0.01;

    // Of all rays: hit or miss differs; and other closest hit, all but a few of which are rays straight up along upright shoots.
    private const double HitShare = 1e-4;
    private const double OpenShare = 1e-3;

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
            Assert.SkipUnless(RuntimeInformation.ProcessArchitecture == Architecture.X64, "our harness of Embree sets flags of x64");
            Assert.SkipWhen(program is null && EmbreeWitness.IsMissing(problem), "needs the Debian packages g++ and libembree-dev");
            Assert.True(program is not null, problem);
            var tally = new Tally();

            // A hedge of thrown leaves, and a grown canopy with shoots, petioles and clusters, thin tubes among them.
            Compare(program, RandomScenes.Hedge(1200, 8, new Cell(2.4, 1.5)), tally);
            var grown = new GrownCanopy(GrownCanopy.Scenario()).Grow(45).Set();
            var canopy = new CanopyScene(GrownCanopy.Scenario()).Place(grown.Canopy, SceneDetail.Drawn);
            Assert.InRange(canopy.Leaves.Count(leaf => leaf is not null), 900, 2500);
            Compare(program, canopy.Scene, tally);
            _output.WriteLine(tally.ToString());

            Assert.True(tally.Rays >= 1_000_000);
            Assert.InRange(tally.Hits, 0.3 * tally.Rays, 0.95 * tally.Rays);
            Assert.True(tally.HitDiffers <= HitShare * tally.Rays, tally.ToString());
            Assert.True(tally.Ties + tally.Open <= OpenShare * tally.Rays, tally.ToString());
            Assert.True(tally.Unexplained == 0, tally.ToString());
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
                if (own is { } hit && closest[ray].Triangle >= 0) CompareHits(scene, sets[set][ray], hit, closest[ray], tally);
            }
        }
    }

    private static void CompareHits(Scene scene, in GivenRay ray, WideHit own, (int Triangle, float Distance) other, Tally tally)
    {
        var difference = Math.Abs(own.Distance - other.Distance);
        if (difference <= DistanceTolerance)
        {
            tally.Largest = Math.Max(tally.Largest, difference);
            if (own.Triangle != other.Triangle) tally.Ties++;
            return;
        }

        var missedByOne = own.Distance < other.Distance ? own.Triangle : other.Triangle;
        var sine = Math.Min(Sine(scene, own.Triangle, ray.Direction), Sine(scene, other.Triangle, ray.Direction));
        if (NearMiss.ToRim(scene.Corners, missedByOne, ray.Origin, ray.Direction) < Rounding || sine < GrazingSine) tally.Open++;
        else tally.Unexplained++;
    }

    private static double Sine(Scene scene, int triangle, Vector3 direction)
    {
        var (a, b, c) = (scene.Corners[3 * triangle], scene.Corners[(3 * triangle) + 1], scene.Corners[(3 * triangle) + 2]);
        return Math.Abs(Vector3.Dot(Vector3.Normalize(Vector3.Cross(b - a, c - a)), direction));
    }

    private sealed class Tally
    {
        public int Rays { get; set; }

        public int Hits { get; set; }

        public int HitDiffers { get; set; }

        public int Ties { get; set; }

        public int Open { get; set; }

        public int Unexplained { get; set; }

        public double Largest { get; set; }

        public override string ToString() =>
            $"{Rays} rays, {Hits} hits; hit or miss differs for {HitDiffers}; distances differ by {Largest:0.0e0} m at most but for {Open} rays that pass a rim or along a face and {Unexplained} others; {Ties} ties";
    }
}
