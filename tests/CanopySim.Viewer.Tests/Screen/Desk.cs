using CanopySim.Files.Recording;
using CanopySim.Results;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Tests.Screen;

/// <summary>A screen without a window, with hands: each does what a person would, through the queue.</summary>
public sealed class Desk : IDisposable
{
    public Desk(int width = 1280, int height = 800, SeasonRecording? recording = null, ViewState? state = null)
    {
        Model = new ScreenModel(recording ?? GrownSeason.Open(), Trial, state);
        Do(new Resize(width, height));
    }

    public FakeTrial Trial { get; } = new();

    public ScreenModel Model { get; }

    public ViewState State => Model.State;

    public ScreenOutcome Do(params InputEvent[] events)
    {
        foreach (var input in events) Model.Enqueue(input);
        return Model.Handle();
    }

    public ScreenOutcome Click(float x, float y) =>
        Do(new PointerMove(x, y), new PointerDown(x, y), new PointerUp(x, y));

    public ScreenOutcome Click(string widget)
    {
        Reveal(widget);
        var bounds = Bounds(widget);
        return Click(bounds.MidX, bounds.MidY);
    }

    public ScreenOutcome Type(string text) => Do(new TextTyped(text));

    public ScreenOutcome Key(ScreenKey key, KeyModifiers modifiers = KeyModifiers.None) =>
        Do(new KeyDown(key, modifiers));

    public T Find<T>(string name)
        where T : Widget => Assert.IsType<T>(Model.Find(name));

    public SKRect Bounds(string name) =>
        Model.Find(name)?.Bounds ?? throw new InvalidOperationException($"no widget {name} on the screen");

    /// <summary>Scrolls the panel with the wheel until the widget can be seen.</summary>
    public void Reveal(string name)
    {
        for (var turn = 0; turn < 60; turn++)
        {
            if (Model.Find(name) is not { Clip: { } clip } widget || clip.Contains(widget.Bounds)) return;
            var above = widget.Bounds.Top < clip.Top;
            Do(new Wheel(clip.MidX, clip.MidY, above ? 0.5f : -0.5f));
        }
    }

    public SKBitmap Picture(uint under = 0)
    {
        var bitmap = new SKBitmap(new SKImageInfo(Model.Size.Width, Model.Size.Height, SKColorType.Rgba8888,
            SKAlphaType.Premul));
        using var canvas = new SKCanvas(bitmap);
        Model.Draw(canvas);
        if (under == 0) return bitmap;
        using var paint = new SKPaint { Color = new SKColor(0xFF000000 | under), BlendMode = SKBlendMode.DstOver };
        canvas.DrawPaint(paint);
        return bitmap;
    }

    public void Dispose() => Model.Dispose();
}

/// <summary>Grows nothing, and notes what it was asked for.</summary>
public sealed class FakeTrial : ITrialRunner
{
    public TrialStatus Status { get; set; } = TrialStatus.Idle;

    public string? WeatherFile { get; set; }

    public Scenario? Started { get; private set; }

    public (string Text, string FileName)? Saved { get; private set; }

    public void Start(Scenario scenario) => (Started, Status) = (scenario, new TrialStatus(TrialStage.Running));

    public void Stop() => Status = TrialStatus.Idle;

    public string Save(string text, string fileName)
    {
        Saved = (text, fileName);
        return $"Written: {fileName}";
    }

    /// <summary>The season that was opened, riper and later, as the trial's result.</summary>
    public void Finish(SeasonResult before) => Status = new TrialStatus(TrialStage.Done, 1, before with
    {
        Summary = before.Summary with
        {
            Dates = before.Summary.Dates with { TargetSugar = before.Summary.Dates.TargetSugar!.Value.AddDays(3) },
            Harvest = before.Summary.Harvest! with { SugarBrix = before.Summary.Harvest.SugarBrix + 0.4 },
        },
    }, GrownSeason.Open());
}
