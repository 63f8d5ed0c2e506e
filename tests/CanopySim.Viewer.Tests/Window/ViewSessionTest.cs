using CanopySim.Drawing.Gl;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;
using CanopySim.Viewer.Window;

namespace CanopySim.Viewer.Tests.Window;

/// <summary>The whole window but for the window: canopy and screen together, off-screen.</summary>
[Collection(AloneCollection.Name)]
public sealed class ViewSessionTest
{
    private const int Width = 900;
    private const int Height = 600;
    private const int Scrubs = 1000;

    [Fact]
    public void The_canopy_shows_between_the_bars()
    {
        using var stage = new Stage();
        var picture = stage.Draw();
        var area = stage.Screen.PictureArea;

        // The row's green and the ground, many colors; the bars one surface with text on it.
        var colors = new HashSet<int>();
        for (var x = (int)area.Left; x < area.Right; x += 3)
            for (var y = (int)area.Top; y < area.Bottom; y += 3) colors.Add(Rgb(picture, x, y));
        Assert.True(colors.Count > 200, $"{colors.Count} colors");
        Assert.Equal(0xFAF8F4, Rgb(picture, 3, 3));
        Assert.True(Enumerable.Range(0, Width).Any(x => Rgb(picture, x, 22) != 0xFAF8F4), "no text in the bar above");
    }

    [Fact]
    public void What_rests_is_drawn_finely_once_and_then_nothing_is()
    {
        using var stage = new Stage();
        stage.Draw();
        Assert.Equal((1, 0), stage.Session.Drawn);
        stage.Session.Advance(0.3);
        stage.Draw();
        Assert.Equal((1, 1), stage.Session.Drawn);
        stage.Session.Advance(0.3);
        Assert.False(stage.Session.NeedsFrame);
        Assert.Null(stage.Session.SecondsToNextFrame);
    }

    [Fact]
    public void A_drag_turns_the_picture()
    {
        using var stage = new Stage();
        var before = stage.Draw();
        var area = stage.Screen.PictureArea;
        stage.Do(new PointerDown(area.MidX, area.MidY), new PointerMove(area.MidX + 90, area.MidY), new PointerUp(area.MidX + 90, area.MidY));
        Assert.True(Differing(before, stage.Draw()) > 0.2, "most of the picture stayed");
    }

    [Theory]
    [InlineData("w")]
    [InlineData("x")]
    [InlineData("q")]
    [InlineData("z")]
    public void Each_usual_view_is_another_picture(string key)
    {
        using var stage = new Stage();
        var area = stage.Screen.PictureArea;
        stage.Do(new PointerDown(area.MidX, area.MidY), new PointerMove(area.MidX + 200, area.MidY + 20), new PointerUp(area.MidX + 200, area.MidY + 20));
        var before = stage.Draw();
        stage.Do(new TextTyped(key));
        Assert.True(Differing(before, stage.Draw()) > 0.2, "most of the picture stayed");
    }

    [Fact]
    public void A_click_on_a_leaf_chooses_it_and_tells_of_it()
    {
        using var stage = new Stage();
        stage.Do(new TextTyped("x"));
        stage.Draw();
        var area = stage.Screen.PictureArea;
        for (var y = area.Top + 20; y < area.Bottom && stage.Screen.State.LeafId is null; y += 25)
            stage.Do(new PointerDown(area.MidX, y), new PointerUp(area.MidX, y));
        var leaf = Assert.NotNull(stage.Screen.State.LeafId);
        Assert.Equal(SidePanel.Leaf, stage.Screen.State.Panel);
        var day = stage.Screen.State.Day;
        Assert.Contains(stage.Screen.Recording.Canopy(day).Blades, blade => blade.LeafId == leaf);
    }

    /// <summary>A thousand days in any order: no error of the driver (drawing would throw), and memory stays.</summary>
    [Fact]
    public void A_thousand_scrubs_leave_no_memory_behind()
    {
        using var stage = new Stage(320, 240);
        var random = new Random(1);
        for (var i = 0; i < 50; i++) Scrub();
        GC.Collect();
        var (managed, whole) = (GC.GetTotalMemory(true), Environment.WorkingSet);
        for (var i = 0; i < Scrubs; i++) Scrub();
        Assert.True(GC.GetTotalMemory(true) - managed < 8e6, $"{(GC.GetTotalMemory(true) - managed) / 1e6:0.0} MB more managed memory");
        Assert.True(Environment.WorkingSet - whole < 100e6, $"{(Environment.WorkingSet - whole) / 1e6:0.0} MB more in all");

        void Scrub()
        {
            stage.Screen.SetDay(random.Next(stage.Screen.Recording.DayCount));
            stage.Session.Advance(0.01);
            stage.Put();
        }
    }

    private static int Rgb(byte[] picture, int x, int y)
    {
        var at = 4 * ((y * Width) + x);
        return (picture[at] << 16) | (picture[at + 1] << 8) | picture[at + 2];
    }

    private static double Differing(byte[] one, byte[] other)
    {
        var differing = 0;
        for (var at = 0; at < one.Length; at += 4)
            if (Math.Abs(one[at] - other[at]) + Math.Abs(one[at + 1] - other[at + 1]) + Math.Abs(one[at + 2] - other[at + 2]) > 12) differing++;
        return differing / (one.Length / 4.0);
    }

    private sealed class Stage : IDisposable
    {
        private readonly EglContext _context = RecordedBlock.Context();
        private readonly PixelPicture _pixels;
        private readonly int _width;
        private readonly int _height;

        public Stage(int width = Width, int height = Height)
        {
            (_width, _height) = (width, height);
            _pixels = new PixelPicture(_context.Gl);
            Screen = new ScreenModel(RecordedBlock.Open());
            Session = new ViewSession(_context, Screen);
            Do(new Resize(width, height));
        }

        public ScreenModel Screen { get; }

        public ViewSession Session { get; }

        public void Do(params InputEvent[] events)
        {
            foreach (var happened in events) Screen.Enqueue(happened);
            Session.Advance(0);
        }

        public void Put() => Session.Draw(_pixels.Framebuffer(_width, _height));

        public byte[] Draw()
        {
            Put();
            return _pixels.Read();
        }

        public void Dispose()
        {
            Session.Dispose();
            Screen.Recording.Dispose();
            Screen.Dispose();
            _pixels.Dispose();
            _context.Dispose();
        }
    }
}
