using System.Globalization;
using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Painting;
using CanopySim.Drawing.Views;
using CanopySim.Files.Charts;
using CanopySim.Views;
using SkiaSharp;

namespace CanopySim.Drawing.Pictures;

/// <summary>A canopy that a season kept, with its block.</summary>
/// <param name="Portrait">The canopy.</param>
/// <param name="Scenario">Its block.</param>
/// <param name="UtcOffsetHours">Local standard time less UTC [h].</param>
public sealed record KeptCanopy(CanopyPortrait Portrait, Scenario Scenario, double UtcOffsetHours);

/// <summary>
/// Canopies in perspective for reports, each leaf in the color of its age: from one place, at one hour, in colors of
/// one range, so that they can be put side by side. A season need not be recorded for it.
/// </summary>
public sealed class PortraitPictures : IDisposable
{
    public const string Stem = "canopy-in-perspective";

    /// <summary>Width of a picture [px].</summary>
    public const int Width = 960;

    /// <summary>Height of the scene, under which the legend stands [px].</summary>
    public const int SceneHeight = 520;

    // Local standard time of every picture [h]: the sun is well up, and one side of the row is lit more than the other.
    private const double Hour = 10.5;

    private readonly IGlContext _context;
    private readonly CanopyPainter _painter;
    private readonly PixelPicture _pixels;
    private readonly PictureFrame _frame;

    /// <param name="context">Current on this thread; stays the caller's.</param>
    public PortraitPictures(IGlContext context)
    {
        _context = context;
        _frame = PictureFrame.Under(SceneHeight, new PictureOptions { Width = Width, TextScale = 1 });
        _pixels = new PixelPicture(context.Gl);
        _painter = new CanopyPainter(context) { ShowsSunPath = false };
    }

    /// <summary>Draws them all from one place.</summary>
    public IReadOnlyList<ChartPicture> Draw(IReadOnlyList<KeptCanopy> canopies)
    {
        if (canopies.Count == 0) return [];
        var camera = new Camera(BlockShape.Around([.. canopies.Select(one => BlockShape.Of(one.Scenario))]));
        return [.. canopies.Select(canopy => Draw(canopy, camera))];
    }

    public void Dispose()
    {
        _painter.Dispose();
        _pixels.Dispose();
    }

    private ChartPicture Draw(KeptCanopy canopy, Camera camera)
    {
        var (portrait, scenario) = (canopy.Portrait, canopy.Scenario);
        var coloring = LeafColoring.Fixed(LeafQuantity.Age);
        _context.MakeCurrent();
        _painter.SetBlock(scenario);
        _painter.SetCanopy(portrait.Drawn, ripeness: 0);
        _painter.SetShares(
            [.. portrait.AgeOfBlade.Select(age => coloring.ShareOf(Math.Max(0, age)))], coloring.Table());
        var sun = SunPath.At(scenario, canopy.UtcOffsetHours, portrait.Date, Hour);
        _painter.SetSun(sun.Z > 0 ? sun : null, []);
        _painter.Draw(camera, Width, SceneHeight, Fineness.Still, _pixels.Framebuffer(Width, SceneHeight));
        using var bitmap = new SKBitmap(
            new SKImageInfo(Width, SceneHeight + _frame.BandHeight, SKColorType.Rgba8888, SKAlphaType.Opaque));
        _pixels.Read().CopyTo(bitmap.GetPixelSpan());
        using var canvas = new SKCanvas(bitmap);
        var when = $"{PictureText.DayText(portrait.Date)}, {CanopyPictures.WhenWords(portrait)}";
        _frame.DrawBand(
            canvas, $"{scenario.Name}, {when}", $"T{Seen(canopy)[1..]}.", Legend.Of(coloring, Units.Metric));
        return new ChartPicture(
            Stem, "The canopy in perspective",
            $"{scenario.Name} on {when}, in the sun of {PictureText.TimeText(Hour)} standard time: {Seen(canopy)}, "
                + $"each leaf in the color of its age{Ages(portrait)}.",
            PalettePng.Of(bitmap), "", "");
    }

    private static string Seen(KeptCanopy canopy)
    {
        var vines = canopy.Scenario.Rows.VineCount;
        var leaves = canopy.Portrait.Drawn.Blades.Count.ToString("N0", CultureInfo.InvariantCulture);
        return $"the row seen from the alley, with {leaves} leaves on "
            + (vines == 1 ? "the vine that it repeats" : $"the {vines} vines that it repeats");
    }

    private static string Ages(CanopyPortrait portrait)
    {
        var ages = portrait.AgeOfBlade.Where(age => age >= 0).Order().ToList();
        return ages.Count == 0 ? "" : FormattableString.Invariant(
            $"; half of them are {ages[ages.Count / 2]} days or older, the oldest {ages[^1]}");
    }
}
