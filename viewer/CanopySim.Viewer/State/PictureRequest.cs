using CanopySim.Drawing.Views;

namespace CanopySim.Viewer.State;

/// <summary>What of the canopy's picture is no longer right.</summary>
[Flags]
public enum PictureChange
{
    None = 0,

    /// <summary>Its place or size.</summary>
    Size = 1,

    /// <summary>Its surroundings: light or dark.</summary>
    Theme = 2,

    /// <summary>Another season is shown.</summary>
    Season = 4,

    /// <summary>Another day: other leaves.</summary>
    Day = 8,

    /// <summary>Another hour: the sun stands elsewhere.</summary>
    Hour = 16,

    /// <summary>Only the colors of the leaves.</summary>
    Colors = 32,

    /// <summary>Another leaf is chosen.</summary>
    Leaf = 64,
}

/// <summary>What the pointer or a key asks of the canopy's picture, in the order in which it was asked.</summary>
public abstract record PictureRequest;

/// <summary>Turn the view by a drag of so many pixels, divided by the text's scale and the screen's fineness.</summary>
public sealed record OrbitView(float Right, float Down) : PictureRequest;

/// <summary>Shift the view by a drag of so many pixels.</summary>
public sealed record PanView(float Right, float Down) : PictureRequest;

/// <summary>Come nearer (over 1) or go back (under 1), towards a place [px of the window].</summary>
public sealed record ZoomView(float Factor, float X, float Y) : PictureRequest;

/// <summary>Look from one of the usual places.</summary>
public sealed record LookFrom(ViewPoint View) : PictureRequest;

/// <summary>Show the whole vine again, as at the start.</summary>
public sealed record WholeVine : PictureRequest;

/// <summary>Which leaf is at a place [px of the window]? Answered by <see cref="LeafPicked"/>.</summary>
public sealed record PickLeaf(float X, float Y) : PictureRequest;

/// <summary>What came of the events that were handled.</summary>
/// <param name="Picture">What of the canopy's picture must be made anew.</param>
/// <param name="Requests">What is asked of it.</param>
/// <param name="Paint">Whether the screen must be painted again.</param>
public sealed record ScreenOutcome(PictureChange Picture, IReadOnlyList<PictureRequest> Requests, bool Paint);
