using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Painting;
using CanopySim.Drawing.Views;
using CanopySim.Geometry;
using Silk.NET.OpenGL;

namespace CanopySim.Viewer.Tests.Painting;

[Collection(AloneCollection.Name)]
public class CanopyPainterTest
{
    private const int Width = 320;
    private const int Height = 200;

    private static readonly DateOnly Day = new(2025, 6, 10);

    [Fact]
    public void Every_coloring_shows_the_colors_of_its_table()
    {
        using var context = RecordedBlock.Context();
        using var recording = RecordedBlock.Open();
        using var scene = new RecordingScene(context, recording);
        using var pixels = new PixelPicture(context.Gl);
        var day = Enumerable.Range(0, recording.DayCount).Single(number => recording.Row(number).Date == Day);
        (scene.Painter.IsShaded, scene.Painter.ShowsSunPath) = (false, false);
        scene.Show(new Moment(day, 12.5, LeafQuantity.Age));
        scene.Camera.LookAt(new Vector3(0, 0.75f, 1.2f), 1);
        Draw();
        var places = PlacesOnLeaves();
        Assert.True(places.Count > 15, $"{places.Count} places on leaves");
        foreach (var quantity in Enum.GetValues<LeafQuantity>())
        {
            scene.Show(new Moment(day, 12.5, quantity));
            Draw();
            var picture = pixels.Read();
            var wrong = places.Count(place => !IsColor(picture, place.X, place.Y, scene.Coloring.ColorOf(scene.Values[place.Blade])));
            // A stalk thinner than a pixel may tint one.
            Assert.True(wrong <= places.Count / 10, $"{quantity}: {wrong} of {places.Count} places have another color");
            if (quantity != LeafQuantity.RipeningShare) Assert.True(scene.Values.Distinct().Count() > 3, $"{quantity} has values");
        }

        void Draw() => scene.Painter.Draw(scene.Camera, Width, Height, Fineness.Kept, pixels.Framebuffer(Width, Height));

        // Pixels whose neighbors are of the same blade, so that no edge is mixed in.
        List<(int X, int Y, int Blade)> PlacesOnLeaves()
        {
            List<(int, int, int)> found = [];
            for (var y = 10; y < Height; y += 18)
            {
                for (var x = 10; x < Width; x += 18)
                {
                    var blade = scene.Painter.LeafAt(x, y);
                    if (blade < 0) continue;
                    (int X, int Y)[] near = [(x - 2, y), (x + 2, y), (x, y - 2), (x, y + 2)];
                    if (near.All(place => scene.Painter.LeafAt(place.X, place.Y) == blade)) found.Add((x, y, blade));
                }
            }

            return found;
        }
    }

    [Fact]
    public void A_leaf_is_found_where_it_is_seen_and_nowhere_else()
    {
        using var context = RecordedBlock.Context();
        using var painter = new CanopyPainter(context);
        using var pixels = new PixelPicture(context.Gl);
        var scenario = SyntheticBlock.Scenario;
        painter.SetBlock(scenario);
        DrawnBlade[] blades = [SyntheticBlock.Facing(0, 0.5f, 1.6f), SyntheticBlock.Facing(1, 1.0f, 1.6f), SyntheticBlock.Facing(2, 0.75f, 1.3f)];
        painter.SetCanopy(new DrawnCanopy(blades, [], []), 0);
        var camera = new Camera(BlockShape.Of(scenario));
        // Near enough that every blade is drawn by itself.
        camera.Show(ViewPoint.Across);
        camera.LookAt(new Vector3(0, 0.75f, 1.45f), 2);
        painter.Draw(camera, Width, Height, Fineness.Still, pixels.Framebuffer(Width, Height));
        foreach (var copy in new[] { -1.5f, 0, 1.5f })
        {
            for (var blade = 0; blade < blades.Length; blade++)
            {
                var at = Pixel(blades[blade].Frame.CellFromBlade(new Vector3(0.05f, 0.4f, 0), 0.14f) + new Vector3(0, copy, 0));
                if (at.X < 1 || at.X > Width - 2) continue;
                Assert.Equal(blade, painter.LeafAt((int)at.X, (int)at.Y));
            }
        }

        var between = Pixel(new Vector3(0, 0.75f, 1.66f));
        Assert.Equal(-1, painter.LeafAt((int)between.X, (int)between.Y));
        Assert.Equal(-1, painter.LeafAt(2, 2));
        Assert.Equal(-1, painter.LeafAt(-1, 5));
        Assert.Equal(-1, painter.LeafAt(Width, 5));

        Vector2 Pixel(Vector3 point) => camera.PixelOf(point, Width, Height)!.Value;
    }

    [Fact]
    public void A_blade_throws_its_shadow_where_the_sun_sends_it()
    {
        using var context = RecordedBlock.Context();
        using var painter = new CanopyPainter(context);
        using var pixels = new PixelPicture(context.Gl);
        var scenario = SyntheticBlock.Scenario;
        painter.SetBlock(scenario);
        // Flat, a meter above the alley; the sun at 45 degrees from the left of the row: the shadow lies a meter to the right.
        painter.SetCanopy(new DrawnCanopy([SyntheticBlock.Flat(0, 0.2f, 0.75f, 1)], [], []), 0);
        painter.SetSun(Vector3.Normalize(new Vector3(-1, 0, 1)), []);
        var camera = new Camera(BlockShape.Of(scenario));
        camera.Show(ViewPoint.Above);
        painter.Draw(camera, Width, Height, Fineness.Still, pixels.Framebuffer(Width, Height));
        var picture = pixels.Read();
        var (shaded, bare) = (Brightness(new Vector3(1.2f, 0.83f, 0)), Brightness(new Vector3(1.2f, 1.3f, 0)));
        Assert.True(shaded < 0.8f * bare, $"{shaded} against {bare}");

        // A copy of the row has its own.
        var nextRow = Brightness(new Vector3(1.2f - 2.4f, 0.83f, 0));
        Assert.True(nextRow < 0.8f * bare, $"{nextRow} against {bare}");

        float Brightness(Vector3 point)
        {
            var at = camera.PixelOf(point, Width, Height)!.Value;
            var first = 4 * (((int)at.Y * Width) + (int)at.X);
            return picture[first] + picture[first + 1] + picture[first + 2];
        }
    }

    [Fact]
    public void Shadows_are_drawn_anew_only_when_canopy_or_sun_changed_and_the_picture_rests()
    {
        using var context = RecordedBlock.Context();
        using var recording = RecordedBlock.Open();
        using var scene = new RecordingScene(context, recording);
        using var pixels = new PixelPicture(context.Gl);
        var last = recording.DayCount - 1;
        Show(last, 10.5, LeafQuantity.Age, Fineness.Still);
        Assert.Equal(1, scene.Painter.ShadowsDrawn);
        Show(last, 10.5, LeafQuantity.Shoot, Fineness.Still);
        scene.Camera.Orbit(50, 10);
        Show(last, 10.5, LeafQuantity.Shoot, Fineness.Still);
        Show(last - 10, 11.5, LeafQuantity.Age, Fineness.Moving);
        Assert.Equal(1, scene.Painter.ShadowsDrawn);
        Show(last - 10, 11.5, LeafQuantity.Age, Fineness.Still);
        Assert.Equal(2, scene.Painter.ShadowsDrawn);

        void Show(int day, double hour, LeafQuantity quantity, Fineness fineness)
        {
            scene.Show(new Moment(day, hour, quantity));
            scene.Painter.Draw(scene.Camera, Width, Height, fineness, pixels.Framebuffer(Width, Height));
        }
    }

    [Fact]
    public void Two_hundred_changes_of_the_day_leave_nothing_behind()
    {
        using var context = RecordedBlock.Context();
        using var recording = RecordedBlock.Open();
        using var scene = new RecordingScene(context, recording);
        using var pixels = new PixelPicture(context.Gl);
        for (var day = 0; day < recording.DayCount; day++) Show(day);
        var (names, bytes) = (LivingNames(context.Gl), GC.GetTotalMemory(forceFullCollection: true));
        for (var i = 0; i < 200; i++) Show(i * 37 % recording.DayCount);
        Assert.Equal(names, LivingNames(context.Gl));
        var grown = GC.GetTotalMemory(forceFullCollection: true) - bytes;
        Assert.True(grown < 8_000_000, $"{grown} bytes more");

        void Show(int day)
        {
            scene.Show(new Moment(day, 10.5, LeafQuantity.Age));
            scene.Painter.Draw(scene.Camera, 64, 40, Fineness.Moving, pixels.Framebuffer(64, 40));
        }
    }

    [Fact]
    public void A_chosen_leaf_stands_out()
    {
        using var context = RecordedBlock.Context();
        using var painter = new CanopyPainter(context);
        using var pixels = new PixelPicture(context.Gl);
        painter.SetBlock(SyntheticBlock.Scenario);
        painter.SetCanopy(new DrawnCanopy([SyntheticBlock.Facing(0, 0.75f, 1.5f)], [], []), 0);
        var camera = new Camera(BlockShape.Of(SyntheticBlock.Scenario));
        camera.Show(ViewPoint.Across);
        Assert.DoesNotContain(Draw(), IsAccent);
        painter.SelectedLeaf = 0;
        Assert.Contains(Draw(), IsAccent);

        List<(byte, byte, byte)> Draw()
        {
            painter.Draw(camera, Width, Height, Fineness.Still, pixels.Framebuffer(Width, Height));
            return [.. pixels.Read().Chunk(4).Select(pixel => (pixel[0], pixel[1], pixel[2]))];
        }

        static bool IsAccent((byte Red, byte Green, byte Blue) pixel) =>
            Math.Abs(pixel.Red - 0x3F) < 12 && Math.Abs(pixel.Green - 0x5F) < 12 && Math.Abs(pixel.Blue - 0x7F) < 12;
    }

    [Fact]
    public void Shares_for_other_blades_are_refused()
    {
        using var context = RecordedBlock.Context();
        using var painter = new CanopyPainter(context);
        painter.SetBlock(SyntheticBlock.Scenario);
        Assert.Throws<ArgumentException>(() => painter.SetShares([0.5f], new uint[256]));
    }

    private static bool IsColor(byte[] picture, int x, int y, uint rgb)
    {
        var first = 4 * ((y * Width) + x);
        return Math.Abs(picture[first] - (byte)(rgb >> 16)) <= 3
            && Math.Abs(picture[first + 1] - (byte)(rgb >> 8)) <= 3
            && Math.Abs(picture[first + 2] - (byte)rgb) <= 3;
    }

    private static (int Buffers, int Textures, int Framebuffers, int Renderbuffers, int Arrays) LivingNames(GL gl)
    {
        var names = Enumerable.Range(1, 5000).Select(name => (uint)name).ToArray();
        return (names.Count(gl.IsBuffer), names.Count(gl.IsTexture), names.Count(gl.IsFramebuffer), names.Count(gl.IsRenderbuffer), names.Count(gl.IsVertexArray));
    }
}
