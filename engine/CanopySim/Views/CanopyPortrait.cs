using CanopySim.Geometry;

namespace CanopySim.Views;

/// <summary>
/// A canopy kept for pictures: the scene that light saw on a day, and the ages of its blades on that day.
/// </summary>
public sealed record CanopyPortrait
{
    public required DateOnly Date { get; init; }

    /// <summary>
    /// True on the day of veraison; else the day of the largest leaf area, in a season without veraison.
    /// </summary>
    public required bool IsAtVeraison { get; init; }

    public required Scene Scene { get; init; }

    /// <summary>Age of the blade of each surface [d]; −1 for wood and clusters.</summary>
    public required IReadOnlyList<int> AgeOfSurface { get; init; }

    /// <summary>
    /// Height of the highest corner over the ground below it, and how far any reaches to either side of its row [m].
    /// </summary>
    public (double Height, double HalfWidth) Extent
    {
        get
        {
            var (height, halfWidth) = (0.0, 0.0);
            var spacing = Scene.Cell.Across / Scene.RowCount;
            for (var at = 0; at < Scene.Corners.Length; at++)
            {
                var (corner, row) = (Scene.Corners[at], Scene.RowOf(Scene.SurfaceOfTriangle[at / 3]));
                height = Math.Max(height, CanopyView.HeightOver(Scene.Cell, corner));
                halfWidth = Math.Max(halfWidth, Math.Abs(corner.X - (row * spacing)));
            }

            return (height, halfWidth);
        }
    }

    /// <summary>The placed canopy as it stands; ages are copied, since leaves grow older.</summary>
    public static CanopyPortrait Of(PlacedCanopy placed, DateOnly date, bool isAtVeraison) => new()
    {
        Date = date,
        IsAtVeraison = isAtVeraison,
        Scene = placed.Scene,
        AgeOfSurface = [.. placed.Leaves.Select(leaf => leaf?.AgeDays ?? -1)],
    };
}
