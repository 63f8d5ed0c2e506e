using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using Xunit;

namespace CanopySim.Tests.Light;

public class ScatteringMonteCarloTests
{
    private const int Photons = 30_000;

    // Photons that go on from anywhere on the face do what links mean: only sampling is left, here 400 directions at 6 mm.
    private const double SamplingError = 0.001;

    // Photons that go on from where they hit know what links do not: a face is lit unevenly, and so is a strip of ground. As a
    // share of the incident light (10⁶ photons): 0.0006 to 0.0056, NIR the most, where leaves stick in coarse boxes of fruit.
    private const double EvenFaceError = 0.007;

    public static TheoryData<string, double, double, double, double, double> Cases => new()
    {
        { "PAR, uniform sky", -1, 0.08, 0.06, 0.15, 0.12 },
        { "PAR, sun 40°", 40, 0.08, 0.06, 0.15, 0.12 },
        { "NIR, uniform sky", -1, 0.45, 0.40, 0.40, 0.25 },
        { "NIR, sun 65°", 65, 0.45, 0.40, 0.40, 0.25 },
        { "bright ground", -1, 0.45, 0.40, 0.40, 0.90 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Photons_from_even_faces_end_where_the_links_say(
        string name, double zenith, double reflectance, double transmittance, double wood, double ground) =>
        Compare(name, zenith, reflectance, transmittance, wood, ground, evenFaces: true);

    [Theory]
    [MemberData(nameof(Cases))]
    public void Photons_from_where_they_hit_end_nearly_where_the_links_say(
        string name, double zenith, double reflectance, double transmittance, double wood, double ground) =>
        Compare(name, zenith, reflectance, transmittance, wood, ground, evenFaces: false);

    private static void Compare(
        string name, double zenith, double reflectance, double transmittance, double wood, double ground, bool evenFaces)
    {
        var scene = RandomScenes.Hedge(120, 14, new Cell(0.9, 0.6));
        Vector3? sun = zenith < 0 ? null : SkyRings.Direction(zenith, 25);
        var hour = sun is { } direction ? LightCases.Sun(direction, 1 / direction.Z) : LightCases.UniformSky();
        var light = LightGeometry.Build(scene, SkyRings.Spiral(400), LightCases.Quality(0.006, 0.003), 2)
            .Solve([hour], LightCases.Uniform(reflectance, transmittance, wood, ground), 2);
        var photons = new PathTracer(scene, reflectance, transmittance, wood, ground, evenFaces);
        photons.Run(Photons, sun);

        var budget = light.ParBudgets[0];
        Assert.Equal(1, budget.Incident, 1e-5);
        double ByKind(SurfaceKind kind) =>
            Enumerable.Range(0, scene.SurfaceCount).Where(surface => scene.Kinds[surface] == kind).Sum(surface => photons.AbsorbedBySurface[surface]);
        Check("leaves", budget.AbsorbedLeaves, ByKind(SurfaceKind.Blade));
        Check("wood", budget.AbsorbedWood, ByKind(SurfaceKind.Wood));
        Check("clusters", budget.AbsorbedClusters, ByKind(SurfaceKind.Cluster));
        Check("ground", budget.AbsorbedGround, photons.AbsorbedByGround);
        Check("reflected", budget.Reflected, photons.Reflected);

        // Single leaves: the photons' error and 2 % or 5 % for what the links leave out (10⁶ photons: up to 1.3 % and 2.9 %).
        var leafError = evenFaces ? 0.02 : 0.05;
        var (chi, leaves) = (0.0, 0);
        for (var surface = 0; surface < scene.SurfaceCount; surface++)
        {
            if (scene.Kinds[surface] != SurfaceKind.Blade) continue;
            var expected = photons.AbsorbedBySurface[surface];
            var error = Math.Sqrt(expected + 1 + Math.Pow(leafError * expected, 2));
            var counted = light.AbsorbedPar[surface] / scene.Cell.GroundArea * Photons;
            (chi, leaves) = (chi + Math.Pow((counted - expected) / error, 2), leaves + 1);
        }

        Assert.True(chi / leaves < 1 + (4 * Math.Sqrt(2.0 / leaves)), $"{name}: mean square of leaves {chi / leaves}");

        void Check(string term, double linked, double counted)
        {
            var share = counted / Photons;
            var error = Math.Sqrt(share * (1 - share) / Photons);
            Assert.True(Math.Abs(linked - share) < (4 * error) + (evenFaces ? SamplingError : EvenFaceError), $"{name}, {term}: links {linked}, photons {share} ± {error}");
        }
    }
}
