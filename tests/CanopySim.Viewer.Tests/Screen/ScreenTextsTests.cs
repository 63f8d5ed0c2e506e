using CanopySim.Files.Charts;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Tests.Screen;

/// <summary>
/// Text on every screen: in its box, over no other text, legible on what lies under it, and drawn with ink.
/// </summary>
public sealed class ScreenTextsTests
{
    public static TheoryData<int, int, double, SidePanel> Screens
    {
        get
        {
            var screens = new TheoryData<int, int, double, SidePanel>();
            foreach (var panel in Enum.GetValues<SidePanel>())
            {
                screens.Add(1280, 800, 1, panel);
                screens.Add(800, 600, 1, panel);
                screens.Add(800, 600, 1.5, panel);
                screens.Add(1280, 800, 1.5, panel);
                screens.Add(2560, 1440, 1.5, panel);
                screens.Add(1280, 800, 2, panel);
            }

            return screens;
        }
    }

    [Theory]
    [MemberData(nameof(Screens))]
    public void NoTextLeavesItsBoxOrCoversAnother(int width, int height, double scale, SidePanel panel)
    {
        // US units are the longer ones: they are tried where room is least, and where most people look.
        var isTriedInUs = (width == 800 && scale > 1) || (width == 1280 && scale == 1);
        foreach (var units in isTriedInUs ? (Units[])[Units.Metric, Units.Us] : [Units.Metric])
        {
            using var desk = Open(width, height, scale, panel, units);
            var pages = 0;
            for (var page = 0; page < 12; page++)
            {
                using var picture = desk.Picture(0x8C9A86);
                Save(picture, $"{panel}-{width}x{height}-{scale}-{units}-{page}");
                CheckTexts(desk.Model);
                pages++;
                var before = desk.Model.Scroll;
                desk.Do(new Wheel(width - 40, desk.Model.PictureArea.MidY, -6));
                if (desk.Model.Scroll == before) break;
            }

            Assert.InRange(pages, 1, 11);
        }
    }

    [Theory]
    [InlineData(ScreenTheme.Light)]
    [InlineData(ScreenTheme.Dark)]
    public void EveryTextContrastsWithWhatLiesUnderIt(ScreenTheme theme)
    {
        foreach (var panel in Enum.GetValues<SidePanel>())
        {
            using var desk = Open(1280, 800, 1, panel, Units.Metric, theme);
            using var drawn = desk.Picture(0x8C9A86);
            Save(drawn, $"{panel}-{theme}");

            // One button of each kind under the pointer, long enough for its tip.
            foreach (var name in (string[])["", "panel.colors", "panel.help", "play.day", "color.age", "color.shoot",
                "trial.undo", "season"])
            {
                if (desk.Model.Find(name)?.Bounds is { } hovered) desk.Do(new PointerMove(hovered.MidX, hovered.MidY),
                    new Tick(1));
                using var picture = desk.Picture();
                foreach (var text in desk.Model.Texts)
                {
                    var contrast = ScreenPalette.Contrast(text.Rgb, text.On);
                    Assert.True(contrast >= 4.5, $"{text.Owner}: \"{text.Text}\" has a contrast of {contrast:0.00}");
                    var (x, y) = ((int)text.Ink.Left - 1, (int)text.Ink.MidY);
                    if (!text.Owner.StartsWith("trial.curve") && IsClear(desk.Model, text))
                        Assert.True(IsNear(picture.GetPixel(x, y), text.On, 24),
                            $"{text.Owner}: \"{text.Text}\" does not lie on {text.On:X6}");
                }
            }
        }
    }

    [Fact]
    public void GlyphsAreDrawnWithInk()
    {
        using var desk = Open(1280, 800, 1, SidePanel.Help, Units.Metric);
        using var picture = desk.Picture();
        foreach (var text in InSight(desk.Model))
        {
            var ink = 0;
            for (var x = (int)text.Ink.Left; x < text.Ink.Right; x++)
                for (var y = (int)text.Ink.Top; y < text.Ink.Bottom; y++)
                    if (IsNear(picture.GetPixel(x, y), text.Rgb)) ink++;
            Assert.True(ink >= text.Text.Count(char.IsLetterOrDigit),
                $"{text.Owner}: \"{text.Text}\" has {ink} pixels of ink");
        }
    }

    [Fact]
    public void NothingCoversTheCanopyUncalled()
    {
        using var desk = new Desk();
        using var picture = desk.Picture();
        var area = desk.Model.PictureArea;
        Assert.True(area.Height >= 0.68f * 800, $"the canopy has {area.Height} of 800 pixels");
        Assert.Equal(1280, area.Width);
        for (var x = 0; x < 1280; x += 7)
            for (var y = (int)area.Top; y < area.Bottom; y += 7) Assert.Equal(0, picture.GetPixel(x, y).Alpha);
    }

    private static Desk Open(int width, int height, double scale, SidePanel panel, Units units,
        ScreenTheme theme = ScreenTheme.Light)
    {
        var day = GrownSeason.LeavesOn.DayNumber - GrownSeason.Result.Days[0].Date.DayNumber;
        var desk = new Desk(width, height,
            state: new ViewState { Day = day, TextScale = scale, Units = units, Theme = theme, Panel = panel });
        if (panel == SidePanel.Leaf) desk.Type("n");
        if (panel == SidePanel.Trial)
        {
            desk.Model.Edit(desk.Model.Draft with
            {
                ShootsPerMeter = 20,
                ToppingHeight = 1.8,
                Form = Training.TrellisForm.TwinCurtain
            });
            desk.Trial.Finish(GrownSeason.Result);
            desk.Do();
        }

        return desk;
    }

    private static void CheckTexts(ScreenModel model)
    {
        var window = new SKRect(0, 0, model.Size.Width, model.Size.Height);
        var texts = InSight(model).ToList();
        Assert.NotEmpty(texts);
        foreach (var text in texts)
        {
            Assert.False(text.Text.EndsWith('…'), $"{text.Owner}: \"{text.Text}\" is cut");
            Assert.True(Grown(text.Box, 1.5f).Contains(text.Ink),
                $"{text.Owner}: \"{text.Text}\" {text.Ink} leaves its box {text.Box}");
            Assert.True(window.Contains(text.Ink), $"{text.Owner}: \"{text.Text}\" {text.Ink} leaves the window");
        }

        for (var i = 0; i < texts.Count; i++)
            for (var j = i + 1; j < texts.Count; j++)
                Assert.False(texts[i].Ink.IntersectsWith(texts[j].Ink),
                    $"{texts[i].Owner} \"{texts[i].Text}\" over {texts[j].Owner} \"{texts[j].Text}\"");
    }

    // What the panel's edge cuts off is scrolled into sight, and looked at then.
    private static IEnumerable<DrawnText> InSight(ScreenModel model) =>
        model.Texts.Where(text => model.Find(text.Owner)?.Clip is not { } clip || clip.Contains(text.Ink));

    private static SKRect Grown(SKRect rect, float by)
    {
        rect.Inflate(by, by);
        return rect;
    }

    // The tip may cover any text but its own.
    private static bool IsClear(ScreenModel model, DrawnText text) => text.Owner != "tooltip"
        && InSight(model).Contains(text)
        && !model.Texts.Any(other => other.Owner == "tooltip"
            && Grown(other.Box, 40).Contains(text.Ink.Left - 1, text.Ink.MidY));

    private static bool IsNear(SKColor color, uint rgb, int most = 120)
    {
        var wanted = new SKColor(0xFF000000 | rgb);
        return Math.Abs(color.Red - wanted.Red) + Math.Abs(color.Green - wanted.Green)
            + Math.Abs(color.Blue - wanted.Blue) < most;
    }

    // To be looked at: where the variable names a folder, every screen is written into it.
    private static void Save(SKBitmap picture, string name)
    {
        if (Environment.GetEnvironmentVariable("CANOPYSIM_SCREENS") is not { Length: > 0 } folder) return;
        using var data = picture.Encode(SKEncodedImageFormat.Png, 90);
        File.WriteAllBytes(Path.Combine(folder, name + ".png"), data.ToArray());
    }
}
