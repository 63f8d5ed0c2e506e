using CanopySim.Carbon;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Carbon;

public class CarbonSharingTests
{
    private const double Perennial = 1000;

    private static readonly CarbonParameters Carbon = new();

    private static readonly CarbonSharing Sharing = new(Carbon);

    // By hand: leaves' gain pays first, reserves the rest; what nobody can pay is not paid; the leaves' own loss falls on wood last.
    [Theory]
    [InlineData(5, 12, 100, 12, 7, 0)]
    [InlineData(5, 12, 3, 8, 3, 0)]
    [InlineData(-5, 4, 100, 4, 9, 0)]
    [InlineData(-5, 4, 7, 2, 7, 0)]
    [InlineData(-5, 4, 3, 0, 3, 2)]
    public void A_deficit_is_paid_in_order(
        double net, double maintenance, double reserves, double paid, double fromReserves, double fromPerennials)
    {
        var shared = Sharing.Share(
            new VineCarbon(Perennial, reserves), net, maintenance, new SinkDemands(10, 10, 10, 10, 10, 0), CarbonSeason.FruitGrowth, 1);
        Assert.Equal(paid, shared.MaintenancePaid, 1e-12);
        Assert.Equal(fromReserves, shared.FromReserves, 1e-12);
        Assert.Equal(fromPerennials, shared.FromPerennials, 1e-12);
    }

    [Fact]
    public void Spring_growth_draws_on_usable_reserves_alone()
    {
        var unusable = Carbon.UnusableReserves * Perennial;
        Assert.Equal(0, Spring(unusable).MainAxes);
        // 0.10 a day of the usable 80 g.
        Assert.Equal(8, Spring(unusable + 80).MainAxes, 1e-12);

        static SharedCarbon Spring(double reserves) => Sharing.Share(
            new VineCarbon(Perennial, reserves), 0, 0, new SinkDemands(1000, 0, 0, 0, 0, 0), CarbonSeason.Spring, 1);
    }

    [Fact]
    public void Reserves_help_a_crop_only_when_it_is_short_and_ripening()
    {
        var vine = new VineCarbon(Perennial, 200);
        SharedCarbon Fruit(double supply, CarbonSeason season) => Sharing.Share(vine, supply, 0, new SinkDemands(0, 0, 10, 0, 0, 0), season, 1);
        Assert.Equal(0, Fruit(2, CarbonSeason.FruitGrowth).FromReserves);
        Assert.Equal(0, Fruit(7.5, CarbonSeason.Ripening).FromReserves);
        // 0.03 a day of the usable 150 g is 4.5, of which 3 bring the crop to 70 % of its demand.
        Assert.Equal(3, Fruit(4, CarbonSeason.Ripening).FromReserves, 1e-12);
        Assert.Equal(4.5, Fruit(1, CarbonSeason.Ripening).FromReserves, 1e-12);
    }

    [Fact]
    public void Conserves_carbon_and_keeps_reserves_between_nothing_and_the_ceiling()
    {
        var anyDemands = Gen.Double[0, 40].Select(demand => demand < 5 ? 0 : demand).Array[5];
        Gen.Select(Gen.Double[-60, 150], Gen.Double[0, 40], Gen.Double[0, Carbon.ReserveCeiling * Perennial], anyDemands, Gen.Int[0, 2], Gen.Double[0, 1])
            .Sample((net, maintenance, reserves, wanted, stage, warmth) =>
        {
            var season = (CarbonSeason)stage;
            var vine = new VineCarbon(Perennial, reserves);
            var demands = new SinkDemands(wanted[0], wanted[1], wanted[2], wanted[3], wanted[4], Sharing.ReserveDemand(vine, season));
            var shared = Sharing.Share(vine, net, maintenance, demands, season, warmth);

            var sinks = shared.MainAxes + shared.Laterals + shared.Fruit + shared.Thickening + shared.Roots + shared.Overflow;
            Assert.Equal(
                net + shared.FromReserves + shared.FromPerennials, shared.MaintenancePaid + sinks + shared.ToReserves, 1e-9);
            Assert.InRange(reserves + shared.ToReserves - shared.FromReserves, -1e-9, (Carbon.ReserveCeiling * Perennial) + 1e-9);
            Assert.InRange(shared.MaintenancePaid, 0, maintenance);
            Assert.InRange(shared.MainAxes, 0, demands.MainAxes + 1e-12);
            Assert.InRange(shared.Laterals, 0, demands.Laterals);
            Assert.InRange(shared.Fruit, 0, demands.Fruit + 1e-12);
            Assert.InRange(shared.Thickening, 0, demands.Thickening);
            Assert.InRange(shared.Roots, 0, demands.Roots);
            Assert.True(shared.Overflow >= 0 && shared.FromPerennials >= 0);
        });
    }
}
