using CanopySim.Geometry;
using CanopySim.Plants;

namespace CanopySim.Light;

/// <summary>Leaf area as it was when a geometry was made, to tell how far the canopy has grown away from it.</summary>
internal sealed class PlacedArea
{
    private readonly double[] _areas;
    private readonly double _total;

    public PlacedArea(PlacedCanopy placed, Canopy canopy)
    {
        _areas = new double[canopy.LeavesSoFar];
        for (var surface = 0; surface < placed.Leaves.Count; surface++)
        {
            if (placed.Leaves[surface] is not { } leaf) continue;
            _areas[leaf.Id.Value] = placed.Areas[surface];
            _total += placed.Areas[surface];
        }
    }

    /// <summary>Area that has grown or fallen since, as a share of what there was or of the least area, if that is more; 1 where there was none.</summary>
    /// <param name="canopy">The canopy as it stands.</param>
    /// <param name="leastArea">Leaf area that a smaller canopy counts as [m²].</param>
    public double ShareChanged(Canopy canopy, double leastArea = 0)
    {
        if (_total <= 0) return 1;
        var (changed, kept) = (0.0, 0.0);
        foreach (var leaf in canopy.Leaves())
        {
            var before = leaf.Id.Value < _areas.Length ? _areas[leaf.Id.Value] : 0;
            changed += Math.Abs(leaf.Area - before);
            kept += before;
        }

        return (changed + (_total - kept)) / Math.Max(_total, leastArea);
    }
}
