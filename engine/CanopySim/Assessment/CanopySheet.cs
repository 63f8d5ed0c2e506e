using CanopySim.Parameters;
using CanopySim.Results;

namespace CanopySim.Assessment;

/// <summary>
/// The canopy sheet: what someone with a tape, a rod and a scale would write down of the canopy at veraison and of
/// fruit and prunings at harvest, beside the published ranges. Ranges are those of a divided canopy where the row has
/// more than one wall.
/// </summary>
public static class CanopySheet
{
    private const string AtVeraison = "veraison";
    private const string AtHarvest = "harvest";

    /// <summary>The rows, canopy first; empty where veraison was not reached.</summary>
    /// <param name="survey">The canopy at veraison.</param>
    /// <param name="harvest">Fruit and prunings; null where there were none.</param>
    /// <param name="vineSpacing">Distance between vines in the row [m].</param>
    public static IReadOnlyList<CanopySheetRow> Rows(CanopySurvey? survey, HarvestSummary? harvest, double vineSpacing)
    {
        if (survey is null) return [];
        var isDivided = survey.Walls.Count > 1;
        return [.. Canopy(survey, isDivided), .. Probed(survey), .. Fruit(survey, harvest, isDivided, vineSpacing),
            .. ToJudge()];
    }

    private static IEnumerable<CanopySheetRow> Canopy(CanopySurvey survey, bool isDivided)
    {
        var canopy = survey.Canopy;
        yield return Row("shoots_per_m", "Shoots along the canopy", canopy.ShootsPerM, "1/m",
            PublishedRange.ShootsPerMeter,
            "How densely shoots stand; a divided canopy has two lengths of canopy to each length of row.");
        yield return Row("shoot_length", "Length of a shoot", canopy.ShootLengthCm, "cm", PublishedRange.ShootLength,
            "Longer shoots shade what hangs under them; shorter ones bear too few leaves.");
        yield return Row("shoot_nodes", "Nodes on a shoot", canopy.NodesPerShoot, "1", PublishedRange.ShootNodes,
            "Leaves that a shoot has unfolded.");
        yield return Row("internode", "Length of an internode",
            canopy.NodesPerShoot > 0 ? canopy.ShootLengthCm / canopy.NodesPerShoot : null, "cm",
            PublishedRange.Internode, "Shoot length over its nodes; long internodes are a sign of vigor.");
        yield return Row("lateral_nodes", "Lateral nodes on a shoot", survey.LateralNodesPerShoot, "1",
            PublishedRange.LateralNodes,
            "Leaves on all laterals of a shoot together.");
        yield return Row("leaf_size", "Area of a main leaf", survey.LeafSizeCm2, "cm2", PublishedRange.LeafSize,
            "Judge it against the cultivar: large leaves are a sign of vigor.");
        yield return Row("growing_tips", "Tips that still grow", canopy.GrowingTipsFraction, "share",
            PublishedRange.GrowingTips,
            "Shoots that grow on after veraison take sugar from the fruit.");
        yield return Row("leaf_area", "Leaf area along the canopy", canopy.LeafAreaM2PerM, "m2/m",
            PublishedRange.LeafArea(isDivided),
            "One side of all blades for each length of canopy.");
        yield return Row("leaf_area_density", "Leaf area in the room of the canopy", survey.LeafAreaDensity, "m2/m3",
            PublishedRange.LeafAreaDensity(isDivided),
            "Leaf area over the volume that a tape laid over the foliage would measure, with 2.5 % of the leaf area "
            + "left out at either end.");
    }

    private static IEnumerable<CanopySheetRow> Probed(CanopySurvey survey)
    {
        foreach (var row in Quadrat(QuadratReading.Together(survey.Quadrats), null)) yield return row;
        if (survey.Walls.Count < 2) yield break;
        for (var wall = 0; wall < survey.Walls.Count; wall++)
            foreach (var row in Quadrat(survey.Quadrats[wall], wall + 1))
                yield return row;
    }

    private static IEnumerable<CanopySheetRow> Quadrat(QuadratReading quadrat, int? wall)
    {
        var anyLeaf = quadrat.LeafLayerNumber > 0;
        yield return Of("leaf_layers", "Leaf layers in the fruit zone", quadrat.LeafLayers, "1",
            PublishedRange.LeafLayers,
            "Leaves that a rod through the fruit zone meets, on average.");
        yield return Of("gaps", "Gaps in the fruit zone", quadrat.Gaps, "share", PublishedRange.Gaps,
            "Rods that met nothing.");
        yield return Of("interior_leaves", "Leaves inside the canopy", anyLeaf ? quadrat.InteriorLeaves : null, "share",
            PublishedRange.InteriorLeaves, "Neither the first nor the last that a rod met: such leaves live in shade.");
        yield return Of("exterior_leaves", "Leaves at the outside", anyLeaf ? Rest(quadrat.InteriorLeaves) : null,
            "share",
            PublishedRange.ExteriorLeaves, "First or last that a rod met.");
        yield return Of("interior_clusters", "Clusters inside the canopy", quadrat.InteriorClusters, "share",
            PublishedRange.InteriorClusters, "Clusters with leaves on both sides.");
        yield return Of("exterior_clusters", "Clusters that are exposed",
            quadrat.InteriorClusters is { } inside ? Rest(inside) : null, "share",
            PublishedRange.ExteriorClusters, "First or last that a rod met; in hot places full exposure burns fruit.");

        CanopySheetRow Of(string item, string name, Sampled? sampled, string unit, PublishedRange range,
            string meaning) =>
            Row(item, name, sampled?.Value, unit, range, meaning) with { SamplingError = sampled?.Error, Wall = wall };
    }

    private static Sampled Rest(Sampled share) => share with { Value = 1 - share.Value };

    private static IEnumerable<CanopySheetRow> Fruit(CanopySurvey survey, HarvestSummary? harvest, bool isDivided,
        double vineSpacing)
    {
        yield return Row("leaf_area_per_fruit", "Leaf area for each weight of fruit", harvest?.LeafAreaM2PerKgFruit,
            "m2/kg",
            PublishedRange.LeafAreaPerFruit(isDivided), "Below it the fruit ripens slowly; above it leaf is to spare.",
            AtHarvest);
        yield return Row("yield_to_prunings", "Yield to prunings", harvest?.YieldToPrunings, "1",
            PublishedRange.YieldToPrunings(isDivided),
            "Weight of fruit over that of the canes cut in winter: high where the vine is overcropped, low where it is "
            + "vigorous.", AtHarvest);
        yield return Row("prunings", "Prunings along the canopy",
            harvest?.PruningsKgPerVine / (vineSpacing * survey.Walls.Count), "kg/m",
            PublishedRange.Prunings(isDivided), "Weight of the canes cut in winter for each length of canopy.",
            AtHarvest);
    }

    private static IEnumerable<CanopySheetRow> ToJudge()
    {
        const string Unseen = "The model does not see it.";
        var items = new[] { ("leaf_color", "Color of the leaves"), ("leaf_health", "Health of the leaves") };
        foreach (var (item, name) in items)
        {
            yield return new CanopySheetRow
            {
                Item = item,
                Name = name,
                At = AtVeraison,
                Value = null,
                Unit = "",
                Low = null,
                High = null,
                Mark = Mark.Recalled,
                Source = "Smart & Robinson 1991, from memory",
                Verdict = SheetVerdict.JudgeInRow,
                Meaning = Unseen,
            };
        }
    }

    private static CanopySheetRow Row(
        string item, string name, double? value, string unit, PublishedRange range, string meaning,
        string at = AtVeraison) => new()
        {
            Item = item,
            Name = name,
            At = at,
            Value = value,
            Unit = unit,
            Low = range.Low,
            High = range.High,
            Mark = range.Mark,
            Source = range.Source,
            Verdict = value is { } there ? range.Judge(there) : SheetVerdict.NotReached,
            Meaning = meaning,
        };
}
