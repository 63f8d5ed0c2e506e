using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Painting;
using CanopySim.Files.Recording;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Gif;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing.Processors.Quantization;

namespace CanopySim.Drawing.Pictures;

/// <summary>
/// Films of a recording as animated GIF: a season day by day, or a day hour by hour, from one point of view.
/// </summary>
public static class CanopyFilm
{
    // Hundredths of a second that a picture stays, and the last one.
    private const int DayDelay = 9;
    private const int HourDelay = 45;
    private const int LastDelay = 250;

    /// <summary>Every day with leaves, at one time of day.</summary>
    public static IReadOnlyList<Moment> OfSeason(SeasonRecording recording, LeafQuantity quantity, double hour) =>
        [.. Enumerable.Range(0, recording.DayCount).Where(day => recording.CanopyNumber(day) >= 0).Select(day =>
            new Moment(day, hour, quantity))];

    /// <summary>Every lit hour of a day, at its middle.</summary>
    public static IReadOnlyList<Moment> OfDay(SeasonRecording recording, LeafQuantity quantity, int day) =>
        [.. recording.Hours(day).Hours.Select(hour => new Moment(day, hour + 0.5, quantity))];

    /// <summary>Makes the film.</summary>
    /// <param name="context">Current on this thread.</param>
    /// <param name="recording">The season.</param>
    /// <param name="moments">Its pictures in order, one at least.</param>
    /// <param name="options">How they look.</param>
    /// <param name="progress">Told the share that is done.</param>
    /// <param name="cancellation">Stops between pictures.</param>
    public static FinishedPicture Gif(
        IGlContext context, SeasonRecording recording, IReadOnlyList<Moment> moments, PictureOptions options,
        Action<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfZero(moments.Count);
        using var picture = new CanopyPicture(context, recording, options);
        using var film = new Image<Rgba32>(options.Width, options.Height);
        film.Metadata.GetGifMetadata().RepeatCount = 0;
        var delay = moments[0].Day == moments[^1].Day ? HourDelay : DayDelay;
        for (var i = 0; i < moments.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            using (var bitmap = picture.Draw(moments[i], keepsView: i > 0))
            {
                using var frame = Image.LoadPixelData<Rgba32>(bitmap.GetPixelSpan(), options.Width, options.Height);
                film.Frames.AddFrame(frame.Frames.RootFrame).Metadata.GetGifMetadata().FrameDelay = i == moments.Count
                    - 1 ? LastDelay : delay;
            }

            progress?.Invoke((i + 1.0) / moments.Count);
        }

        // The picture that the film was made with is empty.
        film.Frames.RemoveFrame(0);
        using var bytes = new MemoryStream();
        film.SaveAsGif(bytes, new GifEncoder
        {
            ColorTableMode = GifColorTableMode.Local,
            Quantizer = new OctreeQuantizer(new QuantizerOptions { Dither = null, MaxColors = 256 }),
        });
        return new FinishedPicture(bytes.ToArray(), PictureText.FilmSentence(recording, moments, options.From));
    }
}
