using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.Plants;
using CanopySim.Results;
using CanopySim.Training;

namespace CanopySim.Assessment;

/// <summary>
/// The canopy in the numbers of the field, as it stands on one day. A divided canopy has more meters of canopy than of
/// row.
/// </summary>
public sealed record CanopySurvey
{
    public required CanopySummary Canopy { get; init; }

    /// <summary>The walls of a row, in the order of their numbers.</summary>
    public required IReadOnlyList<FoliageWall> Walls { get; init; }

    /// <summary>
    /// Point quadrat of each wall, that of all rows of the cell together: every insertion counts alike.
    /// </summary>
    public required IReadOnlyList<QuadratReading> Quadrats { get; init; }

    /// <summary>Room that the foliage of each wall of each row takes, row by row.</summary>
    public required IReadOnlyList<WallBox> Boxes { get; init; }

    /// <summary>Unfolded nodes on all laterals of a shoot, mean over primary shoots.</summary>
    public required double LateralNodesPerShoot { get; init; }

    /// <summary>Mean area of a primary shoot's unfolded leaves that still hang [cm²]; null without leaves.</summary>
    public required double? LeafSizeCm2 { get; init; }

    /// <summary>
    /// Leaf area over the room that the foliage takes, all walls and rows together [m² m⁻³]; null without leaves.
    /// </summary>
    public double? LeafAreaDensity =>
        Boxes.Sum(box => box.Volume) is > 0 and var volume ? Boxes.Sum(box => box.LeafArea) / volume : null;

    /// <summary>Surveys a canopy.</summary>
    public static CanopySurvey Of(Scenario scenario, Canopy canopy, PlacedCanopy placed)
    {
        var walls = TrellisLayout.WallsOf(scenario.Trellis);
        var rows = TrellisLayout.RowsOf(scenario);
        var shoots = canopy.PrimaryShoots().ToList();
        var ofRows = PointQuadrat.ReadRows(placed.Scene, rows, scenario.Seed);
        List<QuadratReading> quadrats =
            [.. walls.Select((_, wall) => QuadratReading.Together(ofRows.Select(row => row[wall])))];
        var unfolded = canopy.Leaves().Where(leaf => leaf.Shoot.Order == 1 && leaf.HasUnfolded).ToList();
        return new CanopySurvey
        {
            Canopy = SummaryOf(scenario, canopy, walls.Count, QuadratReading.Together(quadrats)),
            Walls = walls,
            Quadrats = quadrats,
            Boxes = [.. rows.SelectMany(row => row.Walls.Select(wall => WallBox.Of(placed, row, wall)))],
            LateralNodesPerShoot =
                shoots.Sum(shoot => shoot.Phytomers.Sum(phytomer => phytomer.Lateral?.UnfoldedNodes ?? 0))
                / (double)Math.Max(1, shoots.Count),
            LeafSizeCm2 = unfolded.Count > 0
            ? unfolded.Average(leaf => leaf.Area) * UnitConversion.SquareCentimetersPerSquareMeter : null,
        };
    }

    private static CanopySummary SummaryOf(Scenario scenario, Canopy canopy, int canopyPerRow, QuadratReading quadrat)
    {
        var shoots = canopy.PrimaryShoots().ToList();
        var count = Math.Max(1, shoots.Count);
        var leaves = canopy.Leaves().ToList();
        var primary = leaves.Where(leaf => leaf.Shoot.Order == 1).Sum(leaf => leaf.Area);
        var laterals = leaves.Where(leaf => leaf.Shoot.Order == 2).Sum(leaf => leaf.Area);
        var areaPerVine = (primary + laterals) / canopy.Vines.Count;
        var shootsPerVine = shoots.Count / (double)canopy.Vines.Count;
        var metersPerVine = scenario.Rows.VineSpacing * canopyPerRow;
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
