using System.Numerics;
using CanopySim.Plants;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Training;

/// <summary>Shoots of every form, on the flat and on slopes: where they start, how they run, what holds them.</summary>
public class TrellisFormTests
{
    public static TheoryData<TrellisForm> Forms => [.. Enum.GetValues<TrellisForm>()];

    [Theory]
    [MemberData(nameof(Forms))]
    public void Shoots_start_at_their_cordon(TrellisForm form)
    {
        var scenario = GrownCanopy.Scenario(form);
        foreach (var (shoot, points) in Paths(scenario, 5))
        {
            var wall = TrellisLayout.WallOf(scenario, shoot);
            Assert.Equal(wall.CordonHeight, points[0].Z, 1e-5);
            // On a bush they start on its arms, 0.16 m from the middle.
            var away = form == TrellisForm.Bush ? 0.16 : 0;
            var along = form == TrellisForm.Bush ? 0.75 : shoot.PositionAlongRow;
            Assert.Equal(away,
                new Vector2(points[0].X - (float)wall.CordonAcross, points[0].Y - (float)along).Length(), 1e-5);
        }
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public void Internodes_keep_their_length(TrellisForm form)
    {
        foreach (var (shoot, points) in Paths(GrownCanopy.Scenario(form), 90))
            for (var i = 0; i < shoot.Phytomers.Count; i++)
                Assert.Equal(shoot.Phytomers[i].InternodeLength, Vector3.Distance(points[i], points[i + 1]), 2e-5);
    }

    // Low cordons and long shoots: many come down to the ground and run along it.
    [Theory]
    [MemberData(nameof(Forms))]
    public void Shoots_stay_over_the_ground(TrellisForm form)
    {
        foreach (var (slope, aspect) in new[] { (0.0, 180.0), (25.0, 90.0), (25.0, 270.0), (25.0, 0.0) })
        {
            var scenario = GrownCanopy.Scenario(form, slope, aspect);
            if (form is TrellisForm.TwinCurtain or TrellisForm.HighWire)
                scenario = scenario with { Trellis = scenario.Trellis with { CordonHeight = 0.8 } };
            var rise = GroundRise.Of(scenario);
            foreach (var (_, points) in Paths(scenario, 90))
                foreach (var point in points)
                {
                    var ground = (rise.Across * point.X) + (rise.Along * (point.Y - points[0].Y));
                    Assert.True(point.Z - ground > 0.09,
                        $"{form} at {point} on {slope} deg to {aspect}: ground {ground}");
                }
        }
    }

    [Fact]
    public void Some_shoots_of_a_low_curtain_reach_the_ground()
    {
        var trellis = new Trellis { Form = TrellisForm.TwinCurtain, CordonHeight = 0.8 };
        var scenario = GrownCanopy.Scenario() with { Trellis = trellis };
        Assert.Contains(Paths(scenario, 90), path => path.Points[^1].Z < 0.11);
    }

    [Theory]
    [InlineData(TrellisForm.OpenU)]
    [InlineData(TrellisForm.SlantedV)]
    [InlineData(TrellisForm.UpAndDown)]
    public void Walls_keep_their_shoots_between_their_wires(TrellisForm form)
    {
        var scenario = GrownCanopy.Scenario(form);
        var held = 0;
        foreach (var (shoot, points) in Paths(scenario, 90))
        {
            var wall = TrellisLayout.WallOf(scenario, shoot);
            if (wall.Hangs) continue;
            // The internode that meets the wire may reach over it by its own length.
            var over = shoot.Phytomers.Max(phytomer => phytomer.InternodeLength);
            foreach (var point in points.TakeWhile(point => point.Z < wall.TopHeight))
            {
                Assert.InRange(Math.Abs(point.X - wall.MiddleAt(point.Z)) * Math.Cos(wall.Tilt), 0,
                    (0.5 * wall.Width) + over);
                held++;
            }
        }

        Assert.True(held > 100);
    }

    [Theory]
    [InlineData(TrellisForm.TwinCurtain)]
    [InlineData(TrellisForm.OpenU)]
    [InlineData(TrellisForm.SlantedV)]
    [InlineData(TrellisForm.UpAndDown)]
    public void Neighbors_on_a_wall_lean_to_different_sides(TrellisForm form)
    {
        var scenario = GrownCanopy.Scenario(form);
        foreach (var wall in Paths(scenario, 15).GroupBy(path => path.Shoot.Wall))
        {
            var tilt = TrellisLayout.WallsOf(scenario.Trellis)[wall.Key].Tilt;
            // Square to the wall, over its first nodes.
            var sides = wall.Select(path => path.Points[3] - path.Points[0])
                .Select(way => Math.Sign((way.X * Math.Abs(Math.Cos(tilt))) - (way.Z * Math.Sin(tilt)))).ToList();
            Assert.Equal(sides.Select((_, i) => i % 2 == 0 ? sides[0] : -sides[0]), sides);
        }
    }

    [Theory]
    [InlineData(TrellisForm.HangingCurtain)]
    [InlineData(TrellisForm.TwinCurtain)]
    [InlineData(TrellisForm.UpAndDown)]
    public void Curtains_hang_within_their_width(TrellisForm form)
    {
        var scenario = GrownCanopy.Scenario(form);
        foreach (var (shoot, points) in Paths(scenario, 60))
        {
            var wall = TrellisLayout.WallOf(scenario, shoot);
            if (!wall.Hangs) continue;
            Assert.All(points, point =>
                Assert.InRange(Math.Abs(point.X - wall.CordonAcross), 0, (0.5 * wall.Width) + 1e-5));
            if (shoot.Length > 0.8)
                Assert.True(points[^1].Z < points[0].Z - 0.4,
                $"tip at {points[^1].Z} of a shoot {shoot.Length} m long");
        }
    }

    // Shoots hang at places evenly spread from a fifth of half the width to all of it, so a curtain is not hollow: of
    // the nodes well under the cordon (0.5 - 0.2) / 0.8 = 38 % are within half of it.
    [Theory]
    [InlineData(TrellisForm.HangingCurtain)]
    [InlineData(TrellisForm.TwinCurtain)]
    public void Curtains_are_filled(TrellisForm form)
    {
        var scenario = GrownCanopy.Scenario(form, vines: 3);
        var walls = TrellisLayout.WallsOf(scenario.Trellis);
        var off = Paths(scenario, 70).SelectMany(path => path.Points.Where(point => point.Z < path.Points[0].Z - 0.4)
            .Select(point =>
                Math.Abs(point.X - walls[path.Shoot.Wall].CordonAcross) / (0.5 * walls[path.Shoot.Wall].Width)))
                .ToList();
        Assert.True(off.Count > 200);
        Assert.InRange(off.Count(share => share < 0.5) / (double)off.Count, 0.2, 0.55);
    }

    [Fact]
    public void Twin_curtains_leave_their_middle_open()
    {
        var nodes = Paths(GrownCanopy.Scenario(TrellisForm.TwinCurtain), 70).SelectMany(path => path.Points).ToList();
        Assert.DoesNotContain(nodes, point => Math.Abs(point.X) < 0.39);
        Assert.Equal(0, nodes.Average(point => point.X), 0.1);
    }

    [Fact]
    public void A_v_opens_upward()
    {
        var scenario = GrownCanopy.Scenario(TrellisForm.SlantedV);
        foreach (var wall in TrellisLayout.WallsOf(scenario.Trellis))
        {
            var points = Paths(scenario, 80).Where(path => path.Shoot.Wall == wall.Index)
                .SelectMany(path => path.Points).ToList();
            var (low, high) =
                (points.Where(point => point.Z < 1.3).Average(point => point.X),
                points.Where(point => point.Z is > 1.7f and < 1.9f).Average(point => point.X));
            // 0.55 m higher at tan 40° = 0.839.
            Assert.Equal(Math.Sign(wall.Tilt) * 0.46, high - low, 0.1);
        }
    }

    [Fact]
    public void Up_and_down_parts_at_its_cordons()
    {
        foreach (var (shoot, points) in Paths(GrownCanopy.Scenario(TrellisForm.UpAndDown), 60).Where(path => path.Shoot.Length > 0.5))
        {
            if (shoot.Wall == 0) Assert.True(points[^1].Z > 1.15 + 0.4);
            else Assert.True(points[^1].Z < 1.0 - 0.2);
        }
    }

    [Fact]
    public void A_bush_spreads_round_its_head()
    {
        var scenario = GrownCanopy.Scenario(TrellisForm.Bush);
        scenario = scenario with { CanopyWork = scenario.CanopyWork with { ShootsPerMeter = 9 } };
        var tips = Paths(scenario, 60).Select(path => path.Points[^1] - new Vector3(0, 0.75f, 0)).ToList();
        Assert.True(tips.All(tip => tip.Z > 0.3));
        // In each quarter of the circle.
        Assert.Equal(4, tips.Select(tip => (tip.X > 0, tip.Y > 0)).Distinct().Count());
    }

    [Fact]
    public void A_free_sprawl_is_wider_than_a_curtain()
    {
        double Widest(TrellisForm form) =>
            Paths(GrownCanopy.Scenario(form), 70).SelectMany(path => path.Points).Max(point => Math.Abs(point.X));
        Assert.InRange(Widest(TrellisForm.HighWire), 0.35, 1.2);
        Assert.True(Widest(TrellisForm.HighWire) > Widest(TrellisForm.HangingCurtain) + 0.1);
    }

    [Fact]
    public void What_no_wire_holds_bends_down()
    {
        var scenario = GrownCanopy.Scenario(TrellisForm.OpenU);
        var shoot = new GrownCanopy(scenario).Grow(60).Canopy.PrimaryShoots().MaxBy(each => each.Length)!;
        var led = new ShootPath(scenario).Nodes(shoot);
        shoot.HeldNodes = 6;
        var half = new ShootPath(scenario).Nodes(shoot);
        Assert.Equal(led[..7], half[..7]);
        Assert.True(half[^1].Z < led[^1].Z - 0.1, $"{half[^1]} and {led[^1]}");
        shoot.HeldNodes = 0;
        Assert.True(new ShootPath(scenario).Nodes(shoot)[^1].Z < half[^1].Z);
        shoot.HeldNodes = 100;
        Assert.Equal(led, new ShootPath(scenario).Nodes(shoot));
    }

    [Theory]
    [InlineData(RoofArms.Right, 1)]
    [InlineData(RoofArms.Left, -1)]
    public void A_one_sided_roof_lies_on_its_side(RoofArms arms, int side)
    {
        var scenario =
            GrownCanopy.Scenario() with { Trellis = new Trellis { Form = TrellisForm.Overhead, RoofArms = arms } };
        Assert.All(Paths(scenario, 60), path => Assert.True(side * path.Points[^1].X > 0));
    }

    // tan 20° = 0.364: over a cross slope the roof's plane rises as the ground does.
    [Theory]
    [InlineData(90, 0.364)]
    [InlineData(270, -0.364)]
    public void A_roof_follows_a_cross_slope(double aspect, double fall)
    {
        var scenario = GrownCanopy.Scenario(TrellisForm.Overhead, slope: 20, aspect: aspect);
        var shown = 0;
        foreach (var (_, points) in Paths(scenario, 70))
            foreach (var point in points.TakeWhile(point => Math.Abs(point.X) < 1).Where(point => Math.Abs(point.X) > 0.5))
            {
                Assert.Equal(2.05 - (fall * point.X), point.Z, 0.12);
                shown++;
            }

        Assert.True(shown > 20);
    }

    [Fact]
    public void Catch_wires_lead_shoots_back_where_they_narrow()
    {
        var trellis = new Trellis { TopWireHeight = 2, CatchWires = [new(1.2, 0.5), new(1.5, 0.1), new(1.9, 0.1)] };
        var scenario = GrownCanopy.Scenario() with { Trellis = trellis };
        double Spread(Trellis each) =>
            Paths(scenario with { Trellis = each }, 70).SelectMany(path => path.Points)
            .Where(point => point.Z is > 1.6f and < 1.9f).Average(point => Math.Abs(point.X));
        Assert.True(Spread(trellis) < 0.1, $"{Spread(trellis)}");
        Assert.True(Spread(trellis with { CatchWires = [] }) > 0.1);
    }

    /// <summary>
    /// Any trellis of any size on any slope: numbers, lengths and ground are kept. The seed is that of a cross slope so
    /// steep that shoots meet the ground beside the row; the rest of the cases is new each time.
    /// </summary>
    [Theory]
    [InlineData("eUj3a5LU_Af2")]
    [InlineData(null)]
    public void Any_trellis_leads_shoots_without_breaking_them(string? seed) =>
        ScenarioGen.Any.Sample(scenario =>
        {
            foreach (var (shoot, points) in Paths(scenario, 40))
                for (var i = 0; i < shoot.Phytomers.Count; i++)
                {
                    Assert.True(float.IsFinite(points[i + 1].X + points[i + 1].Y + points[i + 1].Z));
                    var (length, step) =
                        (shoot.Phytomers[i].InternodeLength, Vector3.Distance(points[i], points[i + 1]));
                    if (points[i + 1].Z > 0.11) Assert.Equal(length, step, 2e-5 + (2e-6 * points[i].Length()));
                }
        }, seed: seed, iter: 40);

    // A cluster's middle hangs some 7 cm under its node.
    [Fact]
    public void Fruit_of_a_high_wire_hangs_in_its_fruit_zone()
    {
        var scenario = GrownCanopy.Scenario(TrellisForm.HighWire, vines: 4);
        var zone = TrellisLayout.WallsOf(scenario.Trellis)[0].FruitZone;
        var middles = Paths(scenario, 60)
            .SelectMany(path => path.Shoot.Phytomers.Zip(path.Points.Skip(1)))
            .Where(node => node.First.Cluster is not null).Select(node => node.Second.Z - 0.07).ToList();
        var inside = middles.Count(height => height > zone.Height(0) && height < zone.Height(1));
        Assert.True(inside > 0.9 * middles.Count, $"{inside} of {middles.Count}");
    }

    private static IEnumerable<(Shoot Shoot, Vector3[] Points)> Paths(Scenario scenario, int days)
    {
        var path = new ShootPath(scenario);
        return new GrownCanopy(scenario).Grow(days).Canopy.PrimaryShoots().Select(shoot => (shoot, path.Nodes(shoot)));
    }
}
