using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Painting;
using CanopySim.Files.Recording;
using SkiaSharp;

namespace CanopySim.Drawing.Pictures;

/// <summary>A finished picture.</summary>
/// <param name="Bytes">The file: PNG, or GIF for a film.</param>
/// <param name="Sentence">What it shows, for who cannot see it.</param>
public sealed record FinishedPicture(byte[] Bytes, string Sentence);

/// <summary>Makes pictures of a recording with title, sentence and legend, off-screen.</summary>
public sealed class CanopyPicture : IDisposable
{
    private readonly IGlContext _context;
    private readonly SeasonRecording _recording;
    private readonly PictureOptions _options;
    private readonly PixelPicture _pixels;
    private readonly PictureFrame _frame;

    /// <param name="context">Current on this thread; stays the caller's.</param>
    /// <param name="recording">The season.</param>
    /// <param name="options">How it looks.</param>
    public CanopyPicture(IGlContext context, SeasonRecording recording, PictureOptions options)
    {
        (_context, _recording, _options) = (context, recording, options);
        _frame = new PictureFrame(options);
        _pixels = new PixelPicture(context.Gl);
        Scene = new RecordingScene(context, recording);
        Scene.Painter.Theme = options.Theme;
    }

    /// <summary>The scene, to look at another way.</summary>
    public RecordingScene Scene { get; }

    /// <summary>The picture of a moment as PNG.</summary>
    public FinishedPicture Png(Moment moment)
    {
        using var bitmap = Draw(moment, keepsView: false);
        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 100)
            ?? throw new InvalidOperationException("The picture could not be written as PNG.");
        var title = PictureText.Title(_recording, moment);
        var sentence = PictureText.Sentence(_recording, moment, Scene.Values, _options.From, _options.Units);
        return new FinishedPicture(data.ToArray(), $"{title}: {sentence}");
    }

    public void Dispose()
    {
        Scene.Dispose();
        _pixels.Dispose();
    }

    /// <summary>Pixels of a moment: red, green, blue, alpha.</summary>
    /// <param name="moment">When and what.</param>
    /// <param name="keepsView">True leaves the eye where it is.</param>
    internal SKBitmap Draw(Moment moment, bool keepsView)
    {
        var (width, height) = (_options.Width, _options.Height);
        _context.MakeCurrent();
        Scene.Show(moment);
        if (!keepsView) Scene.Camera.Show(_options.From, Scene.Sun);
        Scene.Painter.Draw(Scene.Camera, width, _frame.SceneHeight, Fineness.Kept,
            _pixels.Framebuffer(width, _frame.SceneHeight));
        var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        _pixels.Read().CopyTo(bitmap.GetPixelSpan());
        using var canvas = new SKCanvas(bitmap);
        _frame.DrawMarks(canvas, Scene);
        _frame.DrawBand(
            canvas, PictureText.Title(_recording, moment),
            PictureText.Sentence(_recording, moment, Scene.Values, _options.From, _options.Units),
                Legend.Of(Scene.Coloring, _options.Units));
        return bitmap;
    }
}
