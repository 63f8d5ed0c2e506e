using CanopySim.Geometry;
using CanopySim.Plants;

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

    /// <summary>The canopy of that evening in few numbers, for pictures in perspective.</summary>
    public required DrawnCanopy Drawn { get; init; }

    /// <summary>Age of each of its blades [d], in their order; −1 while folded.</summary>
    public required IReadOnlyList<int> AgeOfBlade { get; init; }

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

    /// <summary>The canopy as it stands; ages are copied, since leaves grow older.</summary>
    /// <param name="placed">As light saw it.</param>
    /// <param name="canopy">Its vines.</param>
    /// <param name="scene">What draws them.</param>
    /// <param name="date">The day.</param>
    /// <param name="isAtVeraison">Whether it is that of veraison.</param>
    public static CanopyPortrait Of(
        PlacedCanopy placed, Canopy canopy, CanopyScene scene, DateOnly date, bool isAtVeraison)
    {
        var drawn = scene.Draw(canopy);
        var ages = canopy.Leaves().ToDictionary(leaf => leaf.Id.Value, leaf => leaf.HasUnfolded ? leaf.AgeDays : -1);
        return new CanopyPortrait
        {
            Date = date,
            IsAtVeraison = isAtVeraison,
            Scene = placed.Scene,
            AgeOfSurface = [.. placed.Leaves.Select(leaf => leaf?.AgeDays ?? -1)],
            Drawn = drawn,
            AgeOfBlade = [.. drawn.Blades.Select(blade => ages[blade.LeafId])],
        };
    }
}
