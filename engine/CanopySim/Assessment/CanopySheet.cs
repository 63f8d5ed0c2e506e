using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.Plants;
using CanopySim.Results;
using CanopySim.Training;

namespace CanopySim.Assessment;

/// <summary>The canopy in the numbers of the field. A divided canopy has more meters of canopy than of row.</summary>
public static class CanopySheet
{
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
        var canopyPerRow = TrellisLayout.WallsOf(scenario.Trellis).Count;
        var metersPerVine = scenario.Rows.VineSpacing * canopyPerRow;
        var quadrat = PointQuadrat.Read(scene, scenario);
        return new CanopySummary
        {
            ShootsPerVine = shootsPerVine,
            ShootsPerM = shootsPerVine / metersPerVine,
            CanopyMPerRowM = canopyPerRow,
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
