using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Training;

public class ShootThinningTests
{
    private static readonly DateOnly Day = WorkCase.Day;

    // 15 shoots a metre on a vine of 1.5 m: 23; 10 a metre: 15.
    [Fact]
    public void The_weakest_go_first()
    {
        var work = Case(new ShootThinning { On = Day, ShootsPerMeter = 10 });
        var byLength = work.Shoots.OrderByDescending(shoot => shoot.Length).ToList();
        Assert.Equal(23, byLength.Count);
        work.Do();
        Assert.Equal(byLength.Take(15).Select(shoot => shoot.Id.Value).Order(),
            work.Shoots.Select(shoot => shoot.Id.Value).Order());
        Assert.Equal((8, "shoots thinned to 10 per m of canopy, the weakest first"),
            (work.Worker.Done[0].Shoots, work.Worker.Done[0].What));
    }

    /// <summary>
    /// Of evenly spaced shoots none goes beside a gap, so that gaps stay alike; the weakest alone would leave holes.
    /// </summary>
    [Fact]
    public void Crowded_ones_go_so_that_gaps_stay_alike()
    {
        var even = Case(new ShootThinning { On = Day, ShootsPerVine = 15, First = ThinningOrder.Crowded });
        var weak = Case(new ShootThinning { On = Day, ShootsPerVine = 15 });
        even.Do();
        weak.Do();
        Assert.Equal((15, 15), (even.Shoots.Count, weak.Shoots.Count));
        // 23 places of 6.5 cm on 1.5 m: fifteen shoots with one empty place between them at most.
        Assert.InRange(WidestGap(even), 0, 2 * 1.5 / 23 + 1e-6);
        Assert.True(WidestGap(weak) > (3 * 1.5 / 23) - 1e-6, $"{WidestGap(weak)} m");
    }

    [Fact]
    public void What_goes_is_booked_and_the_crop_loses_its_berries()
    {
        var work = Case(new ShootThinning { On = Day, ShootsPerVine = 8 });
        work.Grown.Set();
        var (missing, lost) = work.DoAndWeigh();
        Assert.True(lost > 0);
        Assert.Equal(missing, lost, 1e-9 * lost);
        var vine = work.Canopy.Vines[0];
        Assert.Equal(vine.Clusters().Sum(cluster => cluster.Berries ?? 0), vine.Crop.Berries, 1e-6);
        Assert.True(work.Worker.Done[0].FruitGPerVine > 0);
        Assert.Equal(vine.RemovedLeafArea, work.Worker.Done[0].LeafAreaM2PerVine, 1e-12);
    }

    [Fact]
    public void To_more_shoots_than_stand_it_says_so()
    {
        var work = Case(new ShootThinning { On = Day, ShootsPerVine = 40 }, new ShootThinning { On = Day.AddDays(1), ShootsPerVine = 23 });
        work.Do();
        work.Do(Day.AddDays(1));
        Assert.Equal(23, work.Shoots.Count);
        Assert.Equal(
            [
                "canopy_work.shoot_thinning.0 on 2025-06-01: a vine bore fewer shoots than should stay.",
                "canopy_work.shoot_thinning.1 on 2025-06-02: no vine bore more shoots than should stay, so none was "
                + "taken.",
            ],
            work.Worker.Warnings);
    }

    private static double WidestGap(WorkCase work)
    {
        var places = work.Shoots.Select(shoot => shoot.PositionAlongRow).Order().ToList();
        return places.Zip(places.Skip(1), (one, next) => next - one).Append(places[0] + 1.5 - places[^1]).Max();
    }

    private static WorkCase Case(params ShootThinning[] steps) =>
        new(new CanopyWork { ShootThinning = steps }, GrownCanopy.Scenario());
}
