using CanopySim.Carbon;
using CanopySim.Growth;
using CanopySim.Plants;
using Xunit;

namespace CanopySim.Tests.Growth;

/// <summary>Stems ripen to a mass that follows their length, and to less where they are led down.</summary>
public class StemThickeningTests
{
    private static readonly CarbonParameters Carbon = new();

    // 1.3 m at 0.21 g/cm led up; 0.72 of that led down.
    [Fact]
    public void Stems_that_are_led_down_ripen_to_less()
    {
        var (up, down) = Ripen(isLedDown: [false, true]);
        Assert.Equal(130 * Carbon.RipeStemMass, up, 1e-6);
        Assert.Equal(130 * Carbon.RipeStemMass * Carbon.LedDownStemMass, down, 1e-6);
    }

    // Kliewer & Dokoozlian 2005, Am J Enol Vitic 56:170-181, table 3: canes of 64 g at 130 cm where all stand, 64 g at 142 cm where half hang.
    [Fact]
    public void What_hangs_is_as_much_thinner_as_the_vine_of_which_half_hangs_shows()
    {
        const double Exponent = 0.7;
        var half = 64.0 / 142 / (64.0 / 130 * Math.Pow(142.0 / 130, Exponent));
        Assert.Equal((2 * half) - 1, Carbon.LedDownStemMass, 0.005);
    }

    private static (double Up, double Down) Ripen(bool[] isLedDown)
    {
        var vine = new Vine(new VineId(0), 0, new VineCarbon(1000, 100));
        for (var wall = 0; wall < 2; wall++)
        {
            var shoot = new Shoot(new ShootId(wall), vine.Id, order: 1, 0, 1, wall);
            shoot.Add(new Phytomer(1, 1.3, new Leaf(new LeafId(wall), shoot, 1, 0.01)) { InternodeLength = 1.3 });
            vine.Add(shoot);
        }

        var thickening = new StemThickening(Carbon, isLedDown);
        for (var day = 0; day < 1000; day++)
        {
            thickening.Prepare(vine, warmth: 1);
            StemThickening.Grow(vine, share: 1);
        }

        return (vine.Shoots[0].StemDryMass, vine.Shoots[1].StemDryMass);
    }
}
