namespace CanopySim.Files.Charts;

/// <summary>A canopy in perspective for a page, or why there is none.</summary>
/// <param name="Picture">The picture; null where nothing grew or nothing can be drawn.</param>
/// <param name="Missing">Why nothing can be drawn here, and what to do about it; null where that is not so.</param>
public sealed record CanopyPerspective(ChartPicture? Picture, string? Missing)
{
    /// <summary>Of a page that has no place for one, or a season in which nothing grew.</summary>
    public static CanopyPerspective None { get; } = new(null, null);
}
