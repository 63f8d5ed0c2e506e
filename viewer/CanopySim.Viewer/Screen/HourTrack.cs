using System.Globalization;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>The day's line, midnight to midnight, with the light of the day as a silhouette.</summary>
public sealed class HourTrack : Widget
{
    /// <summary>Height in the design's units: silhouette, hours.</summary>
    public const float Height = 40;

    public const int Hours = 24;

    private const float HourBand = 17;

    private const int HoursBetweenNames = 3;

    // Noon of a clear day in June: a dull day must look dull [µmol m⁻² s⁻¹].
    private const float FullLight = 2000;

    public required IReadOnlyList<(int Hour, float Ppfd)> Light { get; init; }

    public required int Hour { get; init; }

    public required float Scale { get; init; }

    public required Action<int> Set { get; init; }

    public override bool CanFocus => true;

    private float TrackBottom => Bounds.Bottom - (HourBand * Scale);

    /// <summary>Place of a time of day [px].</summary>
    public float PixelOf(double hour) => (float)(Bounds.Left + (hour / Hours * Bounds.Width));

    public override void Draw(Pen pen, WidgetLook look)
    {
        pen.Fill(new SKRect(Bounds.Left, Bounds.Top, Bounds.Right, TrackBottom), pen.Palette.Raised, pen.U(3));
        DrawLight(pen);
        for (var hour = HoursBetweenNames; hour < Hours; hour += HoursBetweenNames)
        {
            var text = string.Create(CultureInfo.InvariantCulture, $"{hour}:00");
            var width = ScreenText.Width(text, TextKind.Plain, Scale);
            var x = PixelOf(hour);
            pen.Line(x, TrackBottom, x, TrackBottom + pen.U(4), pen.Palette.Line, pen.U(1));
            pen.TextIn(
                text, new SKRect(x - (width / 2), TrackBottom + pen.U(3), x + (width / 2) + 1, Bounds.Bottom),
                    TextKind.Plain, pen.Palette.Quiet,
                pen.Palette.Surface);
        }

        SeasonTrack.DrawHandle(pen, PixelOf(Hour + 0.5), Bounds.Top, TrackBottom, look);
        DrawFocus(pen, new SKRect(Bounds.Left, Bounds.Top, Bounds.Right, TrackBottom), look);
    }

    public override void Press(float x, float y) => Drag(x, y);

    public override void Drag(float x, float y) =>
        Set(Math.Clamp((int)Math.Floor((x - Bounds.Left) / Bounds.Width * Hours), 0, Hours - 1));

    private void DrawLight(Pen pen)
    {
        if (Light.Count == 0) return;
        using var builder = new SKPathBuilder();
        var height = 0.92f * (TrackBottom - Bounds.Top);
        builder.MoveTo(PixelOf(Light[0].Hour), TrackBottom);
        foreach (var (hour, ppfd) in Light)
            builder.LineTo(PixelOf(hour + 0.5), TrackBottom - (Math.Clamp(ppfd / FullLight, 0, 1) * height));
        builder.LineTo(PixelOf(Light[^1].Hour + 1), TrackBottom);
        builder.Close();
        using var path = builder.Detach();
        pen.Fill(path, pen.Palette.Silhouette);
    }
}
