using CanopySim.Geometry;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Training;

public class SideHedgingTests
{
    private static readonly DateOnly Day = WorkCase.Day;

    [Theory]
    [InlineData(TrellisForm.UprightHedge, 0.5, 0)]
    [InlineData(TrellisForm.UprightHedge, 0.4, 20)]
    [InlineData(TrellisForm.HangingCurtain, 0.3, 0)]
    [InlineData(TrellisForm.Overhead, 0.3, 0)]
    public void Nothing_is_left_beyond_the_width(TrellisForm form, double width, double slope)
    {
        var work = new WorkCase(
            new CanopyWork { SideHedging = [new SideHedging { On = Day, Width = width }] },
            GrownCanopy.Scenario(form, slope, aspect: 130), days: 70);
        Assert.True(Farthest(work) > (0.5 * width) + 0.05, $"{Farthest(work)} m before");
        var (missing, lost) = work.DoAndWeigh();
        Assert.True(Farthest(work) <= 0.5 * width, $"{Farthest(work)} m left");
        Assert.Equal(missing, lost, 1e-9 * lost);
        Assert.NotEmpty(work.Shoots);
    }

    [Fact]
    public void Cut_shoots_push_their_laterals()
    {
        var work = new WorkCase(
            new CanopyWork { SideHedging = [new SideHedging { On = Day, Width = 0.4 }] },
            GrownCanopy.Scenario(TrellisForm.HangingCurtain), days: 60);
        work.Do();
        var cut = work.Shoots.Where(shoot => shoot.TipStopped).ToList();
        Assert.NotEmpty(cut);
        Assert.All(cut, shoot => Assert.True(shoot.Phytomers[^1].Released));
    }

    [Fact]
    public void Where_nothing_stands_so_wide_it_says_so()
    {
        var work = new WorkCase(new CanopyWork { SideHedging = [new SideHedging { On = Day, Width = 3 }] }, days: 20);
        Assert.False(work.Do().CanopyChanged);
        Assert.Equal(["canopy_work.side_hedging.0 on 2025-06-01: nothing stood beyond 3 m, so nothing was cut."],
            work.Worker.Warnings);
    }

    [Fact]
    public void Narrower_than_the_wires_it_says_so()
    {
        var work = new WorkCase(new CanopyWork { SideHedging = [new SideHedging { On = Day, Width = 0.3 }] });
        work.Do();
        Assert.Equal(
            ["canopy_work.side_hedging.0 on 2025-06-01: the cut is narrower than the 0.35 m that the wires leave to "
            + "the shoots: cutters would meet them."],
            work.Worker.Warnings);
    }

    // The farthest node or blade middle of shoots and laterals from the middle plane of its wall.
    private static double Farthest(WorkCase work)
    {
        var places = new CanopyPlaces(work.Scenario);
        var wall = TrellisLayout.WallsOf(work.Scenario.Trellis)[0];
        var farthest = 0.0;
        foreach (var shoot in work.Shoots)
        {
            var points = places.Nodes(shoot);
            var all = points.Concat(places.Blades(shoot).Select(blade => blade.Middle)).ToList();
            for (var i = 0; i < shoot.Phytomers.Count; i++)
                if (shoot.Phytomers[i].Lateral is { } lateral)
                    all.AddRange(
                        places.LateralNodes(lateral, points[i + 1], CanopyPlaces.Axis(points, i),
                        shoot.Phytomers[i].Rank).Select(node => node.At));
            // A wall stands or hangs: its plane is x = 0; a roof lies at its cordon's height.
            farthest = Math.Max(farthest, all.Max(point => wall.IsFlat
                ? Math.Abs(places.HeightOverGround(point) - wall.CordonHeight)
                : Math.Abs(point.X)));
        }

        return farthest;
    }
}
