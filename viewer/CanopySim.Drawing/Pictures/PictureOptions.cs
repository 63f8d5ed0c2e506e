using CanopySim.Drawing.Painting;
using CanopySim.Drawing.Views;
using CanopySim.Files.Charts;

namespace CanopySim.Drawing.Pictures;

/// <summary>How pictures and films look.</summary>
public sealed record PictureOptions
{
    public int Width { get; init; } = 1280;

    public int Height { get; init; } = 800;

    /// <summary>Size of text over its usual one; grows with the width where it is left out.</summary>
    public float? TextScale { get; init; }

    public ViewPoint From { get; init; } = ViewPoint.Along;

    public SceneTheme Theme { get; init; } = SceneTheme.Light;

    public Units Units { get; init; } = Units.Metric;
}
