using System.Numerics;
using CanopySim.Drawing.Views;
using CanopySim.Geometry;

namespace CanopySim.Viewer.Tests.Views;

public class CameraTest
{
    private const int Width = 1280;
    private const int Height = 800;

    private static readonly BlockShape Level = new(new Cell(2.4, 1.5), 2.4f, 2, 0);
    private static readonly BlockShape Slope = new(new Cell(2.4, 1.5, 0.3, -0.2), 2.4f, 2, 0.5f);
    private static readonly Vector3 Sun = Vector3.Normalize(new Vector3(0.5f, -0.6f, 0.7f));

    [Theory]
    [InlineData(ViewPoint.Along)]
    [InlineData(ViewPoint.Across)]
    [InlineData(ViewPoint.Sun)]
    [InlineData(ViewPoint.Above)]
    public void The_target_is_in_the_middle_of_every_view(ViewPoint view)
    {
        var camera = new Camera(Level);
        camera.Show(view, Sun);
        var pixel = camera.PixelOf(camera.Target, Width, Height);
        Assert.NotNull(pixel);
        Assert.Equal(Width / 2f, pixel.Value.X, 0.1f);
        Assert.Equal(Height / 2f, pixel.Value.Y, 0.1f);
    }

    [Fact]
    public void From_the_sun_the_eye_stands_towards_the_sun()
    {
        var camera = new Camera(Level);
        camera.Show(ViewPoint.Sun, Sun);
        Assert.True(Vector3.Dot(Vector3.Normalize(camera.Eye - camera.Target), Sun) > 0.9999f);
    }

    [Fact]
    public void From_above_the_row_runs_upwards_and_right_is_right()
    {
        var camera = new Camera(Level);
        camera.Show(ViewPoint.Above);
        var (middle, along, right) = (Pixel(Vector3.Zero), Pixel(Vector3.UnitY), Pixel(Vector3.UnitX));
        Assert.True(along.Y < middle.Y - 20);
        Assert.True(right.X > middle.X + 20);

        Vector2 Pixel(Vector3 point) => camera.PixelOf(point, Width, Height)!.Value;
    }

    [Fact]
    public void Depth_runs_from_minus_one_to_one()
    {
        var camera = new Camera(Level);
        var forward = Vector3.Normalize(camera.Target - camera.Eye);
        Assert.InRange(DepthAt(0.2f), -1.0f, 0.2f);
        Assert.InRange(DepthAt(159), 0.99f, 1);
        Assert.True(DepthAt(161) > 1);

        float DepthAt(float distance)
        {
            var clip = Vector4.Transform(new Vector4(camera.Eye + (distance * forward), 1), camera.ClipFromCell(Width, Height));
            return clip.Z / clip.W;
        }
    }

    [Fact]
    public void It_never_goes_under_the_ground_of_a_slope()
    {
        var camera = new Camera(Slope);
        var random = new Random(7);
        for (var i = 0; i < 2000; i++)
        {
            switch (random.Next(4))
            {
                case 0: camera.Orbit(random.Next(-200, 200), random.Next(-400, 200)); break;
                case 1: camera.Pan(random.Next(-300, 300), random.Next(-300, 300), Height); break;
                case 2: camera.Zoom(random.Next(-6, 7)); break;
                default: camera.Show((ViewPoint)random.Next(4), Sun); break;
            }

            var eye = camera.Eye;
            Assert.True(eye.Z - Slope.GroundAt(eye.X, eye.Y) > 0.05f, $"after {i}: {eye}");
            Assert.True(float.IsFinite(camera.ClipFromCell(Width, Height).M11));
        }
    }

    [Fact]
    public void Panning_moves_what_is_seen_with_the_hand()
    {
        var camera = new Camera(Level);
        camera.Show(ViewPoint.Across);
        var point = camera.Target;
        camera.Pan(40, 25, Height);
        var pixel = camera.PixelOf(point, Width, Height)!.Value;
        Assert.Equal((Width / 2f) + 40, pixel.X, 1f);
        Assert.Equal((Height / 2f) + 25, pixel.Y, 1f);
    }

    [Fact]
    public void A_target_that_leaves_the_cell_comes_in_on_the_other_side()
    {
        var camera = new Camera(Level);
        camera.Show(ViewPoint.Across);
        for (var i = 0; i < 50; i++) camera.Pan(-100, 0, Height);
        Assert.InRange(camera.Target.Y, 0, 1.5f);
    }
}
