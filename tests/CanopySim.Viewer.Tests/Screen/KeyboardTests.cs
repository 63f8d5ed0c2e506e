using System.Text.Json;
using CanopySim.Files.Charts;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Tests.Screen;

/// <summary>
/// Everything by keys: focus, panels, the view, text, surfaces; and what belongs to the picture stays with it.
/// </summary>
public sealed class KeyboardTests
{
    public static TheoryData<SidePanel> Panels => [.. Enum.GetValues<SidePanel>()];

    [Theory]
    [MemberData(nameof(Panels))]
    public void TabReachesEveryControlOnceAndShowsWhereItIs(SidePanel panel)
    {
        using var desk = new Desk(state: new ViewState { Day = 150, Panel = panel });
        var wanted = desk.Model.Widgets.Where(widget => widget.CanFocus).Select(widget => widget.Name).ToList();
        List<string> met = [];
        byte[] before = [];
        for (var i = 0; i < wanted.Count; i++)
        {
            desk.Key(ScreenKey.Tab);
            met.Add(desk.Model.Focus!);
            var widget = desk.Model.Find(desk.Model.Focus!)!;
            if (widget.Clip is { } clip) Assert.True(clip.Contains(widget.Bounds), $"{widget.Name} is out of sight");
            using var after = desk.Picture();
            Assert.False(after.Bytes.AsSpan().SequenceEqual(before), $"{widget.Name} shows no focus");
            before = after.Bytes;
        }

        Assert.Equal(wanted, met);
        desk.Key(ScreenKey.Tab);
        Assert.Equal(wanted[0], desk.Model.Focus);
        desk.Key(ScreenKey.Tab, KeyModifiers.Shift);
        Assert.Equal(wanted[^1], desk.Model.Focus);
    }

    [Fact]
    public void EnterAndSpacePressTheButtonInFocus()
    {
        using var desk = new Desk();
        desk.Key(ScreenKey.Tab);
        Assert.Equal("panel.colors", desk.Model.Focus);
        desk.Key(ScreenKey.Enter);
        Assert.Equal(SidePanel.Colors, desk.State.Panel);
        desk.Type(" ");
        Assert.Equal(SidePanel.None, desk.State.Panel);
        Assert.Equal(Playing.Nothing, desk.State.Playing);

        // After a click the space bar plays.
        desk.Click("panel.colors");
        desk.Type(" ");
        Assert.Equal(Playing.Season, desk.State.Playing);
        Assert.Equal(SidePanel.Colors, desk.State.Panel);
    }

    [Fact]
    public void LettersCallPanelsAndEscapePutsThemAway()
    {
        using var desk = new Desk();
        foreach (var (letter, panel) in ((string, SidePanel)[])
            [("c", SidePanel.Colors), ("L", SidePanel.Leaf), ("a", SidePanel.Charts), ("y", SidePanel.Trial),
                ("?", SidePanel.Help)])
        {
            Assert.True(desk.Type(letter).Picture.HasFlag(PictureChange.Size));
            Assert.Equal(panel, desk.State.Panel);
            Assert.True(desk.Model.PictureArea.Width < 1280);
            desk.Key(ScreenKey.Escape);
            Assert.Equal(SidePanel.None, desk.State.Panel);
            Assert.Equal(1280, desk.Model.PictureArea.Width);
            desk.Type(letter + letter);
            Assert.Equal(SidePanel.None, desk.State.Panel);
            desk.Type(letter);
            desk.Click("panel.away");
            Assert.Equal(SidePanel.None, desk.State.Panel);
        }
    }

    [Fact]
    public void TextSurfacesAndUnitsTurn()
    {
        using var desk = new Desk();
        var strip = desk.Model.PictureArea.Bottom;
        desk.Type("++");
        Assert.Equal(1.3, desk.State.TextScale);
        Assert.True(desk.Model.PictureArea.Bottom < strip);
        desk.Type("---------");
        Assert.Equal(ViewState.TextScales[0], desk.State.TextScale);
        desk.Type("++++++++++");
        Assert.Equal(ViewState.TextScales[^1], desk.State.TextScale);
        Assert.True(desk.Type("t").Picture.HasFlag(PictureChange.Theme));
        Assert.Equal(ScreenTheme.Dark, desk.State.Theme);
        desk.Type("u");
        Assert.Equal(Units.Us, desk.State.Units);
        desk.Model.ScaleText(-9);
        desk.Type("?");
        desk.Click("theme.light");
        desk.Click("units.metric");
        desk.Click("text.larger");
        Assert.Equal((ScreenTheme.Light, Units.Metric, 1.0),
            (desk.State.Theme, desk.State.Units, desk.State.TextScale));
    }

    [Fact]
    public void KeysTurnTheView()
    {
        using var desk = new Desk();
        Assert.True(Assert.IsType<OrbitView>(Assert.Single(desk.Key(ScreenKey.Left, KeyModifiers.Control).Requests))
            .Right < 0);
        Assert.True(Assert.IsType<PanView>(Assert.Single(desk.Key(ScreenKey.Up,
            KeyModifiers.Control | KeyModifiers.Shift).Requests)).Down < 0);
        Assert.True(Assert.IsType<ZoomView>(Assert.Single(desk.Type("i").Requests)).Factor > 1);
        Assert.True(Assert.IsType<ZoomView>(Assert.Single(desk.Type("o").Requests)).Factor < 1);
        Assert.IsType<WholeVine>(Assert.Single(desk.Type("v").Requests));
    }

    [Fact]
    public void ThePointerOverThePictureMovesTheViewAndOverAPanelDoesNot()
    {
        using var desk = new Desk(state: new ViewState { Day = 150, Panel = SidePanel.Charts });
        var outcome = desk.Do(new PointerDown(300, 300), new PointerMove(340, 310), new PointerUp(345, 310));
        Assert.Equal([new OrbitView(40, 10), new OrbitView(5, 0)], outcome.Requests);
        outcome = desk.Do(new PointerDown(300, 300, PointerButton.Main, KeyModifiers.Shift), new PointerMove(340, 310),
            new PointerUp(340, 310));
        Assert.Equal([new PanView(40, 10)], outcome.Requests);
        outcome = desk.Do(new PointerDown(300, 300, PointerButton.Second), new PointerMove(290, 310),
            new PointerUp(290, 310, PointerButton.Second));
        Assert.Equal([new PanView(-10, 10)], outcome.Requests);
        Assert.Equal(300, Assert.IsType<ZoomView>(Assert.Single(desk.Do(new Wheel(300, 250, 1)).Requests)).X);
        Assert.Equal([new PickLeaf(302, 301)],
            desk.Do(new PointerDown(300, 300), new PointerMove(302, 301), new PointerUp(302, 301)).Requests);
        var panel = desk.Bounds("panel");
        Assert.Empty(desk.Do(new PointerDown(panel.MidX, panel.Bottom - 5), new PointerMove(300, 300),
            new PointerUp(300, 300)).Requests);
        Assert.Empty(desk.Do(new Wheel(panel.MidX, panel.MidY, -2)).Requests);
        Assert.True(desk.Model.Scroll > 0);
    }

    [Fact]
    public void EventsOfOneFrameAreHandledInTheirOrder()
    {
        using var desk = new Desk();
        var (colors, help) = (desk.Bounds("panel.colors"), desk.Bounds("panel.help"));
        desk.Do(
            new PointerMove(colors.MidX, colors.MidY), new PointerDown(colors.MidX, colors.MidY),
                new PointerUp(colors.MidX, colors.MidY),
            new TextTyped("3"), new TextTyped("a"), new TextTyped("5"),
            new PointerDown(help.MidX, help.MidY), new PointerUp(help.MidX, help.MidY));
        Assert.Equal(SidePanel.Help, desk.State.Panel);
        Assert.Equal(Drawing.Leaves.LeafQuantity.TemperatureNow, desk.State.Quantity);

        // A press that is let go elsewhere is none.
        desk.Do(new PointerDown(colors.MidX, colors.MidY), new PointerMove(400, 300), new PointerUp(400, 300));
        Assert.Equal(SidePanel.Help, desk.State.Panel);
    }

    [Fact]
    public void EveryControlHasATipAndTheHelpNamesEveryKeyOfAWidget()
    {
        var help = string.Join(' ', HelpPanel.Keys.Select(key => key.Keys)) + " 2 3 4 5 6 7 8 9 Enter saves";
        foreach (var panel in Enum.GetValues<SidePanel>())
        {
            using var desk = new Desk(state: new ViewState { Day = 150, Panel = panel });
            foreach (var widget in desk.Model.Widgets.Where(widget => widget.CanFocus))
            {
                Assert.True(widget.Tip.Length > 0, $"{widget.Name} has no tip");
                foreach (var key in widget.Key.Split(' ')) Assert.Contains(key, help);
            }

            Assert.Equal(desk.Model.Widgets.Count, desk.Model.Widgets.Select(widget => widget.Name).Distinct().Count());
        }
    }

    [Fact]
    public void TheReportTellsWidgetsStateAndFrame()
    {
        using var desk = new Desk(state: new ViewState { Day = 150, Panel = SidePanel.Charts });
        using (desk.Picture())
        using (desk.Picture())
        {
            var report = JsonDocument.Parse(ScreenReport.Json(desk.Model)).RootElement;
            Assert.Equal(2, report.GetProperty("frame").GetInt32());
            Assert.Equal("2025-07-29", report.GetProperty("date").GetString());
            Assert.Equal("Charts", report.GetProperty("panel").GetString());
            var season = report.GetProperty("widgets").EnumerateArray().Single(widget =>
                widget.GetProperty("name").GetString() == "season");
            Assert.Equal(desk.Bounds("season").Left, season.GetProperty("rect")[0].GetSingle());
        }
    }
}
