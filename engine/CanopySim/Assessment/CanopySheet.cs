using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.Plants;
using CanopySim.Results;

namespace CanopySim.Assessment;

/// <summary>The canopy in the numbers of the field. The three forms built so far have one metre of canopy a metre of row.</summary>
public static class CanopySheet
{
    private const double CanopyPerRow = 1;

    /// <summary>Sums up a canopy as it stands.</summary>
    public static CanopySummary Of(Scenario scenario, Canopy canopy, Scene scene)
    {
        var shoots = canopy.PrimaryShoots().ToList();
        var count = Math.Max(1, shoots.Count);
        var leaves = canopy.Leaves().ToList();
        var primary = leaves.Where(leaf => leaf.Shoot.Order == 1).Sum(leaf => leaf.Area);
        var laterals = leaves.Where(leaf => leaf.Shoot.Order == 2).Sum(leaf => leaf.Area);
        var areaPerVine = (primary + laterals) / canopy.Vines.Count;
        var shootsPerVine = shoots.Count / (double)canopy.Vines.Count;
        var metersPerVine = scenario.Rows.VineSpacing * CanopyPerRow;
        var quadrat = PointQuadrat.Read(scene, scenario);
        return new CanopySummary
        {
            ShootsPerVine = shootsPerVine,
            ShootsPerM = shootsPerVine / metersPerVine,
            CanopyMPerRowM = CanopyPerRow,
            NodesPerShoot = shoots.Sum(shoot => shoot.UnfoldedNodes) / (double)count,
            ShootLengthCm = 100 * shoots.Sum(shoot => shoot.Length) / count,
            PrimaryLeafAreaPerShootCm2 = primary * UnitConversion.SquareCentimetersPerSquareMeter / count,
            LateralLeafAreaPerShootCm2 = laterals * UnitConversion.SquareCentimetersPerSquareMeter / count,
            LeafAreaM2PerVine = areaPerVine,
            LeafAreaM2PerM = areaPerVine / metersPerVine,
            LeafLayerNumber = quadrat.LeafLayerNumber,
            GapFraction = quadrat.GapFraction,
            InteriorLeafFraction = quadrat.InteriorLeafFraction,
            InteriorClusterFraction = quadrat.InteriorClusterFraction,
            GrowingTipsFraction = ShootTip.GrowingFreelyShare(canopy, scenario.Growth),
        };
    }
}
