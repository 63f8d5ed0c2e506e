using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Seasons;

/// <summary>A spring on each form of trellis, on a short piece of row: the accounts of light and carbon close, and the canopy is counted by its walls.</summary>
public class TrellisSeasonTests
{
    private static readonly DateOnly Until = new(2025, 6, 30);

    [Theory]
    [InlineData(TrellisForm.HighWire, 1)]
    [InlineData(TrellisForm.TwinCurtain, 2)]
    [InlineData(TrellisForm.OpenU, 2)]
    [InlineData(TrellisForm.SlantedV, 2)]
    [InlineData(TrellisForm.UpAndDown, 2)]
    [InlineData(TrellisForm.Bush, 1)]
    public void A_spring_closes_its_accounts(TrellisForm form, int walls)
    {
        var block = SeasonCases.Small with { Trellis = new Trellis { Form = form }, CanopyWork = new CanopyWork { ShootsPerMeter = 10 } };
        var result = SeasonCases.Run(block, Until);
        Assert.InRange(result.Summary.Checks.LightClosureMax, 0, 1e-3);
        Assert.InRange(result.Summary.Checks.CarbonClosureMaxRelative, 0, 1e-9);
        var last = result.Days[^1];
        Assert.True(last.ShootLengthCm > 60, $"{last.ShootLengthCm} cm");
        // Six shoots a wall of 0.6 m, each of some 0.2 to 0.4 m² by then.
        Assert.InRange(last.LeafAreaM2PerVine, 6 * walls * 0.1, 6 * walls * 0.5);
    }

    /// <summary>All is per vine: two rows with vines of their own give about what one does, not twice as much.</summary>
    [Fact]
    public void Two_rows_average_over_all_vines()
    {
        var until = new DateOnly(2025, 6, 5);
        var one = SeasonCases.Run(SeasonCases.Small, until).Days[^1];
        var result = SeasonCases.Run(SeasonCases.Small with { Rows = SeasonCases.Small.Rows with { RowsInCell = 2 } }, until);
        var two = result.Days[^1];
        Assert.InRange(result.Summary.Checks.LightClosureMax, 0, 1e-3);
        Assert.InRange(two.LeafAreaM2PerVine / one.LeafAreaM2PerVine, 0.85, 1.15);
        Assert.InRange(two.FractionParAbsorbed / one.FractionParAbsorbed, 0.85, 1.15);
        Assert.InRange(two.TranspirationLPerVine / one.TranspirationLPerVine, 0.85, 1.15);
        Assert.NotEqual(one.LeafAreaM2PerVine, two.LeafAreaM2PerVine);
    }
}
