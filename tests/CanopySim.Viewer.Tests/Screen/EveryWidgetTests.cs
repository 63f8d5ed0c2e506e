using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Tests.Screen;

/// <summary>Every widget of every panel under a hand that clicks, drags, turns the wheel and types.</summary>
public sealed class EveryWidgetTests
{
    private static readonly ScreenKey[] Keys =
    [
        ScreenKey.Enter, ScreenKey.Left, ScreenKey.Right, ScreenKey.Up, ScreenKey.Down, ScreenKey.Home, ScreenKey.End,
        ScreenKey.PageUp, ScreenKey.PageDown, ScreenKey.Escape,
    ];

    public static TheoryData<SidePanel> Panels => [.. Enum.GetValues<SidePanel>()];

    [Theory]
    [MemberData(nameof(Panels))]
    public void EachAnswersAClickOrHasItsStateAlready(SidePanel panel)
    {
        foreach (var name in Names(panel))
        {
            using var desk = Open(panel);
            desk.Reveal(name);
            if (desk.Model.Find(name) is not { CanFocus: true } widget) continue;
            var before = Seen(desk);
            // Not in the middle, where a mark may stand already.
            var (x, y) = (widget.Bounds.Left + (0.37f * widget.Bounds.Width), widget.Bounds.MidY);
            var outcome = desk.Do(new PointerMove(x, y), new PointerDown(x, y), new PointerUp(x, y));
            // Nothing is changed yet that could be undone.
            var answered = name == "trial.undo" || outcome.Requests.Count > 0 || desk.Trial.Started is not null || desk.Trial.Saved is not null
                || widget is PushButton { IsOn: true } or PushButton { IsEnabled: false } || !Seen(desk).SequenceEqual(before);
            Assert.True(answered, $"{name} does not answer");
            Holds(desk, name);
        }
    }

    [Theory]
    [MemberData(nameof(Panels))]
    public void NoneBreaksUnderDragsWheelsAndKeys(SidePanel panel)
    {
        foreach (var name in Names(panel))
        {
            using var desk = Open(panel);
            desk.Reveal(name);
            if (desk.Model.Find(name) is not { } widget) continue;
            var (box, size) = (widget.Bounds, desk.Model.Size);
            desk.Do(
                new PointerDown(box.MidX, box.MidY), new PointerMove(box.Left - 400, box.MidY),
                new PointerMove(size.Width + 50, size.Height + 50), new PointerMove(box.MidX + 3, box.Top - 90),
                new PointerUp(-20, -20));
            desk.Do(new Wheel(box.MidX, box.MidY, 3), new Wheel(box.MidX, box.MidY, -40));
            desk.Do(new PointerDown(box.MidX, box.MidY), new PointerUp(box.MidX, box.MidY));
            foreach (var key in Keys)
            {
                desk.Key(key);
                desk.Key(key, KeyModifiers.Shift);
            }

            desk.Type("ä7 -€");
            desk.Do(new Tick(0.2), new Resize(500, 400), new Tick(3), new Resize(1280, 800));
            Holds(desk, name);
        }
    }

    private static Desk Open(SidePanel panel) => new(state: new ViewState { Day = 150, Panel = panel });

    private static List<string> Names(SidePanel panel)
    {
        using var desk = Open(panel);
        // What stands on every screen is tried once.
        using var bare = Open(SidePanel.None);
        var common = panel == SidePanel.None ? [] : bare.Model.Widgets.Select(widget => widget.Name).ToHashSet();
        List<string> names = [.. desk.Model.Widgets.Where(widget => widget.TakesPointer).Select(widget => widget.Name)
            .Where(name => !common.Contains(name))];
        Assert.True(names.Count > 2, $"{names.Count} widgets");
        return names;
    }

    private static byte[] Seen(Desk desk)
    {
        desk.Do(new PointerMove(-1, -1));
        using var picture = desk.Picture();
        return picture.Bytes;
    }

    private static void Holds(Desk desk, string name)
    {
        Assert.True(desk.State.Day >= 0 && desk.State.Day < desk.Model.Recording.DayCount, name);
        Assert.InRange(desk.State.Hour, 0, 23);
        using SKBitmap picture = desk.Picture();
        Assert.Equal(desk.Model.Size.Width, picture.Width);
    }
}
