using CanopySim.Files.Charts;

namespace CanopySim.Files.Comparison;

/// <summary>What the page of a comparison is made of.</summary>
/// <param name="Options">The options, the one that the others are held against first.</param>
/// <param name="Charts">What <see cref="ComparisonCharts"/> drew.</param>
/// <param name="Views">Views of each option's canopy, at one scale; empty where nothing grew.</param>
/// <param name="Units">Units of the page.</param>
/// <param name="Printed">The day in the foot; null for none.</param>
public sealed record ComparisonReport(
    IReadOnlyList<ComparedOption> Options,
    IReadOnlyList<ChartPicture> Charts,
    IReadOnlyList<IReadOnlyList<ChartPicture>> Views,
    Units Units,
    DateOnly? Printed = null)
{
    /// <summary>Each option's canopy in perspective, seen from one place; empty for a page without.</summary>
    public IReadOnlyList<CanopyPerspective> Perspectives { get; init; } = [];

    internal ComparisonTables Tables { get; } = new(Options, Units);
}
