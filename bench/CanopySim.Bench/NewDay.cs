using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Tests.Light;

namespace CanopySim.Bench;

/// <summary>
/// A day with new geometry: who sees whom, then the suns, sky and scattering of a mixed day of midsummer in both bands. Every run builds anew, for a
/// geometry may keep suns for later days; the workers' arrays are kept, as a season keeps them.
/// </summary>
internal sealed class NewDay(Scene scene, LightQuality quality, int threads)
{
    private const int Mixed = 2;

    private readonly SkyFrame _sky = new(GrownBlock.Scenario.Rows.Azimuth, quality.SkyDirectionCount);
    private readonly LinkWorkers _workers = new();

    /// <summary>Hours with light.</summary>
    public static int HourCount => new VineyardDays(GrownBlock.Scenario, FirstSeason.Offset).Light(new SkyFrame(0, 1))[Mixed].Length;

    public LightGeometry? Geometry { get; private set; }

    /// <summary>The first run of a process compiles, the first of an object makes the workers' arrays.</summary>
    public (Cost Build, Cost Solve) Run()
    {
        var hours = new VineyardDays(GrownBlock.Scenario, FirstSeason.Offset).Light(_sky)[Mixed];
        return (Cost.Of(Build), Cost.Of(() => Geometry!.Solve(hours, GrownBlock.Scenario.Optics, threads)));
    }

    public void Build() => Geometry = LightGeometry.Build(scene, _sky.Directions, quality, threads, _workers);

    public void Forget() => Geometry = null;
}
