using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Tests.Seasons;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>
/// What the levels promise of a grown canopy: the PAR that each leaf absorbs in a day, against the canopy as drawn, with its petioles and every
/// internode, under many directions in fine pixels. Errors are relative to the mean leaf; the bias is that of all leaves together.
/// </summary>
public class LightTargetTests
{
    // The first-season block, a piece of row of 0.6 m on 20 July: 507 leaves, leaf area index 1.7. Closer sampling than this changes the canopy by
    // 0.003 % and a leaf by 0.5 % (root mean square), which the errors below contain.
    private static readonly LightQuality Close = new() { SkyDirectionCount = 1200, SkyPixel = 0.006, SunPixel = 0.002, SolverTolerance = 1e-6 };

    private static readonly Lazy<Case> Grown = new(() => new Case());

    // The project's targets for draft and standard; rough has none and is held to a tenth above what was measured; fine has none and is held to a tenth above what was measured on this canopy (1.26 %).
    [Theory]
    [InlineData(Quality.Rough, 0.194, 0.013, 1e-3)]
    [InlineData(Quality.Draft, 0.06, 0.005, 1e-3)]
    [InlineData(Quality.Standard, 0.02, 0.001, 3e-4)]
    [InlineData(Quality.Fine, 0.0138, 0.0003, 3e-4)]
    public void Levels_keep_their_targets_on_a_clear_an_overcast_and_a_mixed_day(Quality level, double leafError, double canopyBias, double closure)
    {
        var grown = Grown.Value;
        var (found, widest) = grown.Absorbed(level is Quality.Draft or Quality.Rough ? grown.ForLight : grown.Drawn, LightQuality.For(level));
        Assert.InRange(widest, 0, closure);
        for (var day = 0; day < VineyardDays.Days; day++)
        {
            var (bias, error) = Case.Compare(found[day], grown.Exact[day]);
            TestContext.Current.TestOutputHelper?.WriteLine(
                $"{level}, day {day}: bias {100 * bias:F3} %, leaves {100 * error:F2} %, closure {widest:E1}");
            Assert.InRange(error, 1e-4, leafError);
            Assert.InRange(bias, -canopyBias, canopyBias);
        }
    }

    // A draft's own triangles have the outline as drawn; axes in long pieces and stalks as strips are what is left. Measured: 0.5 % of a leaf,
    // 0.01 to 0.07 % of the canopy by how the strips of its few hundred stalks happen to face; a fifth of a draft's bias is let through.
    [Fact]
    public void Triangles_for_light_stand_for_those_that_are_drawn()
    {
        var grown = Grown.Value;
        var (found, _) = grown.Absorbed(grown.ForLight, Close);
        for (var day = 0; day < VineyardDays.Days; day++)
        {
            var (bias, error) = Case.Compare(found[day], grown.Exact[day]);
            TestContext.Current.TestOutputHelper?.WriteLine($"mesh, day {day}: bias {100 * bias:F3} %, leaves {100 * error:F2} %");
            Assert.InRange(error, 1e-5, 0.006);
            Assert.InRange(bias, -0.001, 0.001);
        }
    }

    private sealed class Case
    {
        private readonly VineyardDays _days = new(SeasonCases.Small, SeasonCases.UtcOffset);
        private readonly int _leaves;

        public Case()
        {
            var scenario = SeasonCases.Small;
            var canopy = Simulation.CanopyOn(
                scenario, SeasonCases.Northern(scenario), SeasonCases.UtcOffset, SeasonCases.Draft() with { Quality = Quality.Standard }, new DateOnly(2025, 7, 20));
            var scenes = new CanopyScene(scenario);
            (_leaves, Drawn) = (canopy.LeavesSoFar, scenes.Place(canopy, SceneDetail.Drawn).Scene);
            ForLight = scenes.Place(canopy, SceneDetail.ForLight).Scene;
            (Exact, _) = Absorbed(Drawn, Close);
        }

        public Scene Drawn { get; }

        public Scene ForLight { get; }

        public double[][] Exact { get; }

        public (double[][] LeafPar, double Closure) Absorbed(Scene scene, LightQuality quality) => _days.Absorbed(scene, quality, _leaves);

        // Leaves that have fallen have no light in either.
        public static (double Bias, double Error) Compare(double[] found, double[] exact)
        {
            var leaves = exact.Count(par => par > 0);
            var squares = found.Zip(exact, (value, other) => (value - other) * (value - other)).Sum();
            return ((found.Sum() / exact.Sum()) - 1, Math.Sqrt(squares / leaves) / (exact.Sum() / leaves));
        }
    }
}
