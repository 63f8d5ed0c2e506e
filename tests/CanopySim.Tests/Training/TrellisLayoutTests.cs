using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Training;

public class TrellisLayoutTests
{
    private static Trellis Of(TrellisForm form) => new() { Form = form };

    [Theory]
    [InlineData(TrellisForm.UprightHedge, 1)]
    [InlineData(TrellisForm.HighWire, 1)]
    [InlineData(TrellisForm.HangingCurtain, 1)]
    [InlineData(TrellisForm.TwinCurtain, 2)]
    [InlineData(TrellisForm.OpenU, 2)]
    [InlineData(TrellisForm.SlantedV, 2)]
    [InlineData(TrellisForm.UpAndDown, 2)]
    [InlineData(TrellisForm.Overhead, 1)]
    [InlineData(TrellisForm.Bush, 1)]
    public void Divided_forms_have_two_meters_of_canopy(TrellisForm form, int meters)
    {
        var walls = TrellisLayout.WallsOf(Of(form));
        Assert.Equal(meters, walls.Count);
        Assert.Equal(meters, TrellisLayout.CanopyMetersPerRowMeter(Of(form)));
        Assert.Equal(Enumerable.Range(0, meters), walls.Select(wall => wall.Index));
    }

    [Fact]
    public void Cordons_run_where_the_scenario_puts_them()
    {
        Assert.Equal([(-0.6, 1.7), (0.6, 1.7)], TrellisLayout.CordonsOf(Of(TrellisForm.TwinCurtain)));
        Assert.Equal([(-0.5, 1.4), (0.5, 1.4)],
            TrellisLayout.CordonsOf(new Trellis { Form = TrellisForm.OpenU, CordonHeight = 1.4, CordonDistance = 1 }));
        Assert.Equal([(0, 1.15), (0, 1.0)], TrellisLayout.CordonsOf(Of(TrellisForm.UpAndDown)));
        Assert.Equal([(0, 1.1)],
            TrellisLayout.CordonsOf(
                new Trellis { Form = TrellisForm.UpAndDown, CordonHeight = 1.1, LowerCordonHeight = 1.1 }));
        Assert.Equal([(0, 1.2)],
            TrellisLayout.CordonsOf(new Trellis { Form = TrellisForm.SlantedV, CordonDistance = 0 }));
        Assert.Equal([(0, 0.4)], TrellisLayout.CordonsOf(new Trellis { Form = TrellisForm.Bush, HeadHeight = 0.4 }));
    }

    [Fact]
    public void Walls_lean_outward_and_curtains_hang()
    {
        var v = TrellisLayout.WallsOf(new Trellis { Form = TrellisForm.SlantedV, WallTilt = 45 });
        Assert.Equal([-Math.PI / 4, Math.PI / 4], v.Select(wall => wall.Tilt));
        // 0.15 m from the middle at the cordon, and as much farther out as higher up.
        Assert.Equal(0.15 + 0.8, v[1].MiddleAt(1.2 + 0.8), 1e-12);
        Assert.Equal([0, Math.PI], TrellisLayout.WallsOf(Of(TrellisForm.UpAndDown)).Select(wall => wall.Tilt));
        Assert.All(TrellisLayout.WallsOf(Of(TrellisForm.TwinCurtain)), wall => Assert.True(wall.Hangs));
    }

    [Fact]
    public void Facing_roofs_lead_over_the_alley_between_them()
    {
        var trellis = new Trellis { Form = TrellisForm.Overhead, RoofArms = RoofArms.Facing };
        Assert.Equal([1, -1, 1, -1],
            Enumerable.Range(0, 4).Select(row => TrellisLayout.WallsOf(trellis, row)[0].OnlySide));
        Assert.Equal((0, 1.2), TrellisLayout.SpanOf(trellis));
        Assert.Equal((-1.2, 0), TrellisLayout.SpanOf(trellis, 1));
        Assert.Equal((-1.5, 0), TrellisLayout.SpanOf(trellis with { RoofArms = RoofArms.Left }));
        Assert.Equal((-1, 1), TrellisLayout.SpanOf(trellis with { RoofArms = RoofArms.Both }));
    }

    [Fact]
    public void Width_changes_evenly_between_catch_wires()
    {
        var wall = TrellisLayout.WallsOf(new Trellis { CatchWires = [new(1.2, 0.2), new(1.6, 0.4)] })[0];
        Assert.Equal(1.6, wall.TopHeight);
        Assert.Equal([0.2, 0.2, 0.3, 0.4, 0.4],
            new[] { 0.9, 1.2, 1.4, 1.6, 2.0 }.Select(height => Math.Round(wall.WidthAt(height), 12)));
        Assert.Equal(0.35, TrellisLayout.WallsOf(new Trellis())[0].WidthAt(1.4));
    }

    [Fact]
    public void Wires_and_arms_are_listed_for_drawing()
    {
        Assert.Equal(
            [(0.9, 0, true), (1.2, -0.1, false), (1.2, 0.1, false), (2.0, -0.1, false), (2.0, 0.1, false)],
            TrellisParts.WiresOf(new Trellis { CatchWires = [new(1.2, 0.2)], TopWireHeight = 2 })
                .Select(wire => (wire.Height, wire.Across, wire.IsCordon)));
        var twin = TrellisParts.WiresOf(Of(TrellisForm.TwinCurtain));
        Assert.Equal(2, twin.Count(wire => wire.IsCordon));
        Assert.Equal(4, twin.Count(wire => !wire.IsCordon));
        Assert.Contains(new TrellisBar(-0.8, 1.7, 0.8, 1.7), TrellisParts.BarsOf(Of(TrellisForm.TwinCurtain)));
        // The posts of a V lean as its walls do.
        var post = TrellisParts.BarsOf(Of(TrellisForm.SlantedV))[^1];
        Assert.Equal(Math.Tan(40 * Math.PI / 180),
            (post.ToAcross - post.FromAcross) / (post.ToHeight - post.FromHeight), 1e-12);
        Assert.Empty(TrellisParts.WiresOf(Of(TrellisForm.Bush)));
        Assert.Empty(TrellisParts.BarsOf(Of(TrellisForm.Bush)));
        Assert.Equal(new TrellisWire(1.6, 0, true), Assert.Single(TrellisParts.WiresOf(Of(TrellisForm.HighWire))));
    }

    /// <summary>What a form has no use for changes nothing once it is taken away, and what it uses stays.</summary>
    [Fact]
    public void Each_form_keeps_what_it_uses()
    {
        foreach (var form in Enum.GetValues<TrellisForm>())
        {
            var all = new Trellis
            {
                Form = form,
                CordonHeight = 1.3,
                LowerCordonHeight = 1.1,
                HeadHeight = 0.6,
                TopWireHeight = 2.2,
                FoliageWidth = 0.5,
                CordonDistance = 0.9,
                WallTilt = 20,
                RoofArms = RoofArms.Left,
                CatchWires = [new(1.6, 0.3)],
            };
            var used = TrellisKeys.Used(all);
            Assert.Empty(TrellisKeys.GivenInVain(used));
            Assert.NotEqual(all, used);
            Assert.Equal(form == TrellisForm.Bush ? 0.6 : 1.3, used.CordonHeightOrDefault);
            Assert.Equal(form == TrellisForm.Overhead, used.RoofArms == RoofArms.Left);
        }
    }
}
