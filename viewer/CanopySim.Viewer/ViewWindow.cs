using CanopySim.Drawing;
using CanopySim.Files.Recording;
using CanopySim.Viewer.Commands;

namespace CanopySim.Viewer;

/// <summary>The viewer's window.</summary>
public static class ViewWindow
{
    /// <summary>Opens it and returns when it is closed.</summary>
    /// <exception cref="DrawingException">There is no window to open.</exception>
    public static int Open(SeasonRecording recording, ViewSettings settings) => throw new DrawingException(
        $"The window for {recording.Scenario.Name} is not built yet: write a picture with --picture FILE.png or a film with --film FILE.gif"
        + $" of {settings.Source}.");
}
