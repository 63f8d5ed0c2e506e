using System.Diagnostics;

namespace CanopySim.Viewer.Tests.Window;

/// <summary>The real window, once through what a reader does.</summary>
public sealed class WindowRunTest
{
    [Fact]
    public void A_reader_goes_through_a_season()
    {
        using var window = RealWindow.Open(RecordedBlock.Folder);
        var first = window.Until("first frame", screen => (int)screen["frame"]! > 0);
        Assert.Equal("Age", (string)first["quantity"]!);

        // Drag the date.
        var season = window.RectOf("season");
        var y = (int)((season[1] + season[3]) / 2);
        var days = (int)first["days"]!;
        window.Drag(((int)season[0] + 5, y), ((int)(season[0] + (0.6 * (season[2] - season[0]))), y));
        // A slow window tells of the day under the hand before it tells of where the hand went.
        window.Until("the date follows", screen => (int)screen["day"]! >= 0.5 * days && (int)screen["day"]! <= 0.7 * days);
        window.Key("End");
        window.Until("the last day", screen => (int)screen["day"]! == days - 1);

        // Choose a coloring by hand and by key.
        window.Click("panel.colors");
        window.Until("the colors", screen => (string)screen["panel"]! == "Colors");
        window.Click("color.lightnow");
        window.Until("light", screen => (string)screen["quantity"]! == "LightNow");
        window.Key("2");
        window.Until("efficiency", screen => (string)screen["quantity"]! == "Efficiency");
        window.Key("Escape");
        window.Until("no panel", screen => (string)screen["panel"]! == "None");

        // Look across the row, and click down its middle until a leaf answers.
        window.Key("x");
        var area = window.Screen()["picture"]!.AsArray().Select(node => (double)node!).ToArray();
        var (middle, top, bottom) = ((int)((area[0] + area[2]) / 2), (int)area[1], (int)area[3]);
        var frame = (int)window.Screen()["frame"]!;
        for (var at = top + 60; at < bottom && window.Screen()["leaf_id"] is null; at += 30)
        {
            window.Click(middle, at);
            var before = frame;
            frame = (int)window.Until("a frame after the click", screen => (int)screen["frame"]! > before)["frame"]!;
        }

        Assert.NotNull(window.Screen()["leaf_id"]);
        Assert.Equal("Leaf", (string)window.Screen()["panel"]!);

        // Turn the view, resize the window.
        window.Drag((200, (top + bottom) / 2), (320, ((top + bottom) / 2) + 10));
        window.Resize(1000, 700);
        window.Until("the new size", screen => (int)screen["width"]! == 1000 && (int)screen["height"]! == 700);

        // Try something.
        window.Key("y");
        window.Until("the trial", screen => (string)screen["panel"]! == "Trial");
        window.Click("trial.grow");
        window.Until("a season that runs", screen => (string)screen["trial"]! == "Running");
        window.Until("a season that was tried", screen => (string)screen["trial"]! == "Done");

        window.Key("ctrl+q");
        var (code, errors) = window.End();
        Assert.True(code == 0, errors);
        Assert.Equal("", errors);
    }

    [Fact]
    public void A_season_that_is_being_computed_shows_its_days_and_can_be_closed()
    {
        using var window = RealWindow.Open(RecordedBlock.ScenarioFile);
        window.Until("days that come", screen => (int)screen["days"]! > 3 && !(bool)screen["is_finished"]!);
        var watch = Stopwatch.StartNew();
        window.Key("ctrl+q");
        var (code, errors) = window.End();
        Assert.True(code == 0, errors);
        Assert.Contains("computed at draft quality", errors);
        Assert.Single(errors.Trim().Split('\n'));
        Assert.True(watch.Elapsed < TimeSpan.FromMinutes(1));
    }

    [Fact]
    public void Without_a_display_it_says_what_goes_instead()
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardError = true };
        start.Environment.Remove("DISPLAY");
        start.Environment.Remove("WAYLAND_DISPLAY");
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "canopysim-view.dll"));
        start.ArgumentList.Add(RecordedBlock.Folder);
        using var viewer = Process.Start(start)!;
        var errors = viewer.StandardError.ReadToEnd();
        viewer.WaitForExit();
        Assert.Equal(2, viewer.ExitCode);
        Assert.Contains("--picture FILE.png", errors);
    }

    [Fact]
    public void Without_the_window_library_it_says_what_to_install()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "a library is put before the system's own");
        var folder = Directory.CreateTempSubdirectory("canopysim-library-").FullName;
        try
        {
            foreach (var name in (string[])["libglfw.so.3", "libglfw.so"])
                File.WriteAllText(Path.Combine(folder, name), "no library");
            var start = new ProcessStartInfo("dotnet") { RedirectStandardError = true };
            start.Environment["LD_LIBRARY_PATH"] = folder;
            start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "canopysim-view.dll"));
            start.ArgumentList.Add(RecordedBlock.Folder);
            using var viewer = Process.Start(start)!;
            var errors = viewer.StandardError.ReadToEnd();
            viewer.WaitForExit();
            Assert.Equal(2, viewer.ExitCode);
            Assert.Contains("apt-get install libglfw3", errors);
            Assert.Contains("--picture FILE.png", errors);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
