using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;

namespace CanopySim.Viewer.Tests.Window;

/// <summary>
/// The program in a window of a display of its own (Xvfb), driven by xdotool as a hand would. It waits for what the screen says of itself, never for time.
/// </summary>
internal sealed class RealWindow : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly string _folder = Directory.CreateTempSubdirectory("canopysim-window-").FullName;
    private readonly Process _display;
    private readonly string _displayName;
    private readonly Process _viewer;
    private readonly Task<string> _errors;

    private RealWindow(Process display, string displayName, string[] arguments)
    {
        (_display, _displayName) = (display, displayName);
        var start = new ProcessStartInfo("dotnet") { RedirectStandardError = true, WorkingDirectory = _folder };
        start.Environment["DISPLAY"] = displayName;
        start.Environment["LIBGL_ALWAYS_SOFTWARE"] = "1";
        foreach (var argument in (string[])[Path.Combine(AppContext.BaseDirectory, "canopysim-view.dll"), .. arguments, "--report", Report])
            start.ArgumentList.Add(argument);
        _viewer = Process.Start(start)!;
        _errors = _viewer.StandardError.ReadToEndAsync();
    }

    private string Report => Path.Combine(_folder, "screen.json");

    /// <summary>Opens it, or skips the test where there is no display to be had.</summary>
    public static RealWindow Open(params string[] arguments)
    {
        foreach (var program in (string[])["Xvfb", "xdotool"])
            Assert.SkipUnless(IsThere(program), $"{program} is not installed");
        var start = new ProcessStartInfo("Xvfb", "-displayfd 1 -screen 0 1280x800x24 -nolisten tcp")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        var display = Process.Start(start)!;
        display.ErrorDataReceived += (_, _) => { };
        display.BeginErrorReadLine();
        var number = display.StandardOutput.ReadLine();
        if (number is { Length: > 0 }) return new RealWindow(display, $":{number}", arguments);
        display.Kill();
        throw new InvalidOperationException("Xvfb opened no display");
    }

    /// <summary>What the screen said last.</summary>
    public JsonNode Screen()
    {
        for (var attempt = 0; ; attempt++)
        {
            try
            {
                return JsonNode.Parse(File.ReadAllText(Report))!;
            }
            catch (IOException) when (attempt < 100)
            {
                // Just being replaced.
                Thread.Sleep(5);
            }
        }
    }

    /// <summary>Waits until the screen says what is waited for.</summary>
    public JsonNode Until(string what, Func<JsonNode, bool> says)
    {
        var watch = Stopwatch.StartNew();
        while (true)
        {
            Assert.False(_viewer.HasExited && watch.Elapsed.TotalSeconds > 1, $"{what}: the viewer ended ({(_viewer.HasExited ? _errors.Result : "")})");
            if (File.Exists(Report) && Screen() is { } screen && says(screen)) return screen;
            Assert.True(watch.Elapsed < Patience, $"{what}: it did not come; the screen says {(File.Exists(Report) ? WithoutWidgets() : "nothing")}");
            Thread.Sleep(20);
        }
    }

    /// <summary>Middle of a widget [px].</summary>
    public (int X, int Y) Middle(string widget)
    {
        var rect = RectOf(widget);
        return ((int)((rect[0] + rect[2]) / 2), (int)((rect[1] + rect[3]) / 2));
    }

    public double[] RectOf(string widget)
    {
        var found = Screen()["widgets"]!.AsArray().Single(node => (string)node!["name"]! == widget)!;
        return [.. found["rect"]!.AsArray().Select(node => (double)node!)];
    }

    public void Click(string widget) => Hand($"mousemove {Middle(widget).X} {Middle(widget).Y} click 1");

    public void Click(int x, int y) => Hand($"mousemove {x} {y} click 1");

    public void Drag((int X, int Y) from, (int X, int Y) to) =>
        Hand($"mousemove {from.X} {from.Y} mousedown 1 mousemove {(from.X + to.X) / 2} {(from.Y + to.Y) / 2} mousemove {to.X} {to.Y} mouseup 1");

    public void Key(string key) => Hand($"key {key}");

    public void Resize(int width, int height)
    {
        var id = Output("search --name CanopySim").Split('\n', StringSplitOptions.RemoveEmptyEntries)[^1];
        Hand($"windowsize {id} {width} {height}");
    }

    /// <summary>Waits for its end.</summary>
    /// <returns>Exit code and what it said on its error stream.</returns>
    public (int Code, string Errors) End()
    {
        Assert.True(_viewer.WaitForExit(Patience), "the viewer did not end");
        return (_viewer.ExitCode, _errors.Result);
    }

    public void Dispose()
    {
        foreach (var process in (Process[])[_viewer, _display])
        {
            if (!process.HasExited) process.Kill(entireProcessTree: true);
            process.WaitForExit();
            process.Dispose();
        }

        Directory.Delete(_folder, recursive: true);
    }

    private static bool IsThere(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, program)));

    private string WithoutWidgets()
    {
        var screen = Screen().AsObject();
        screen.Remove("widgets");
        return screen.ToJsonString();
    }

    private void Hand(string does) => Output(does);

    private string Output(string does)
    {
        var start = new ProcessStartInfo("xdotool", does) { RedirectStandardOutput = true };
        start.Environment["DISPLAY"] = _displayName;
        using var hand = Process.Start(start)!;
        var output = hand.StandardOutput.ReadToEnd();
        hand.WaitForExit();
        Assert.True(hand.ExitCode == 0, string.Create(CultureInfo.InvariantCulture, $"xdotool {does} ended with {hand.ExitCode}"));
        return output;
    }
}
