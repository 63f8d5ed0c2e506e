using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Painting;
using CanopySim.Drawing.Views;
using CanopySim.Files.Recording;
using CanopySim.Files.Results;
using static CanopySim.Bench.Tables;

namespace CanopySim.Bench;

/// <summary><c>view</c>: what the viewer's pictures cost off-screen, as a table for the README beside this.</summary>
internal static class ViewCommand
{
    private const string Usage = "view [--width N] [--height N] [--runs N]";

    public static int Run(string[] arguments)
    {
        if (Options.Read(arguments, Usage, ("--width", "1280"), ("--height", "800"), ("--runs", "9")) is not { } options) return 2;
        var (width, height, runs) = (options.Number("--width"), options.Number("--height"), options.Number("--runs"));
        using var recording = Record();
        var days = Enumerable.Range(0, recording.DayCount).ToArray();
        var full = days.MaxBy(day => recording.Canopy(day).Blades.Count);
        using var context = EglContext.Create();
        using var scene = new RecordingScene(context, recording);
        using var pixels = new PixelPicture(context.Gl);
        scene.Show(new Moment(full, 10.5, LeafQuantity.Age));
        var painter = scene.Painter;
        Console.WriteLine(Text($"Pictures of `first-season` with {recording.Canopy(full).Blades.Count} blades a cell, {width} × {height}, {context.Gl.GetStringS(Silk.NET.OpenGL.StringName.Renderer)}, medians of {runs} runs."));
        Console.WriteLine($"Processor: all threads of the process. {Machine.Line}");
        PrintHeader("view", "what", "time gone by [ms]", "processor [ms]", "target, gone by on 2 free cores [ms]");
        foreach (var view in Enum.GetValues<ViewPoint>())
        {
            scene.Camera.Show(view, scene.Sun);
            Draw(Fineness.Still);
            Print("moving", 120, () => Draw(Fineness.Moving));
            Print("still", 400, () => Draw(Fineness.Still));
            Print("kept, for a file", null, () => Draw(Fineness.Kept));
            Print("a leaf is looked for", 30, () => painter.LeafAt(width / 2, height / 2));
            Print("another hour, still", null, Alternating(hour => scene.Show(new Moment(full, 9.5 + hour, LeafQuantity.LightNow)), Fineness.Still));
            Print("another coloring, moving", null, Alternating(what => scene.Show(new Moment(full, 10.5, (LeafQuantity)what)), Fineness.Moving));
            Print("another day, moving", 150, Alternating(back => scene.Show(new Moment(full - (5 * back), 10.5, LeafQuantity.Age)), Fineness.Moving));
            scene.Show(new Moment(full, 10.5, LeafQuantity.Age));

            void Print(string what, int? target, Action work)
            {
                work();
                var cost = Cost.Median([.. Enumerable.Range(0, runs).Select(_ => Cost.Of(work))]);
                Row($"{view}".ToLowerInvariant(), what, Text($"{cost.Wall:0}"), Text($"{cost.Processor:0}"), target is null ? "" : $"{target}");
            }
        }

        return 0;

        void Draw(Fineness fineness)
        {
            painter.Draw(scene.Camera, width, height, fineness, pixels.Framebuffer(width, height));
            context.Gl.Finish();
        }

        Action Alternating(Action<int> change, Fineness fineness)
        {
            var turn = 0;
            return () =>
            {
                change(turn = 1 - turn);
                Draw(fineness);
            };
        }
    }

    private static SeasonRecording Record()
    {
        var (scenario, blocks) = (FirstSeason.Scenario, new MemoryBlocks());
        var writer = new RecordingWriter(
            blocks, scenario, FirstSeason.Weather, FirstSeason.Offset, Quality.Draft, new InputHashes("", [], ""));
        writer.Finish(Simulation.Run(scenario, FirstSeason.Weather, FirstSeason.Offset, new SeasonOptions
        {
            Quality = Quality.Draft,
            Threads = Environment.ProcessorCount,
            Recorder = writer.Add,
        }));
        return new SeasonRecording(blocks, "first-season");
    }
}
