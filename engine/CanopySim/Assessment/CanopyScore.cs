using CanopySim.Results;

namespace CanopySim.Assessment;

/// <summary>
/// Those items of the scorecard of canopies that a model can see, ten points each: six of the card's eight. Color and
/// size of the leaves must be judged in the row, by the cultivar. Levels of the card from memory (Smart &amp; Robinson
/// 1991); where it says "about", a level reaches half way to its neighbors; bounds of "moderate" and "vigorous"
/// laterals, 10 and 20 lateral nodes a shoot, are assumed.
/// </summary>
public static class CanopyScore
{
    /// <summary>
    /// Scores a survey at veraison; items without a value, such as fruit on a vine without any, are left out.
    /// </summary>
    public static CanopyScoreSummary Of(CanopySurvey survey)
    {
        var (canopy, items) = (survey.Canopy, new List<CanopyScoreItem>());
        items.Add(new("gaps", Gaps(100 * canopy.GapFraction)));
        items.Add(new("leaf_layers", Layers(canopy.LeafLayerNumber)));
        if (canopy.InteriorClusterFraction is { } interior)
            items.Add(new("exposed_fruit", Exposure(100 * (1 - interior))));
        items.Add(new("shoot_nodes", ShootNodes(canopy.NodesPerShoot)));
        items.Add(new("laterals", survey.LateralNodesPerShoot switch { <= 10 => 10, <= 20 => 6, _ => 2 }));
        items.Add(new("growing_tips", Tips(100 * canopy.GrowingTipsFraction)));
        return new CanopyScoreSummary(items.Sum(item => item.Points), 10 * items.Count, items);
    }

    internal static int Gaps(double percent) => percent switch { < 15 => 0, < 25 => 4, < 35 => 6, < 45 => 10, _ => 8 };

    internal static int Layers(double layers) => layers switch { <= 1 => 10, <= 1.75 => 8, <= 2 => 4, _ => 2 };

    internal static int Exposure(double percent) =>
        percent switch { >= 60 => 10, >= 45 => 8, >= 35 => 6, >= 25 => 4, _ => 2 };

    internal static int ShootNodes(double nodes) => nodes switch { >= 10 and <= 20 => 10, >= 8 and <= 25 => 6, _ => 2 };

    internal static int Tips(double percent) =>
        percent switch { <= 5 => 10, < 15 => 8, < 25 => 6, < 35 => 4, < 45 => 2, _ => 0 };
}
