using CanopySim.Carbon;
using CanopySim.Fruit;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// Takes shoots, laterals, leaves and clusters off vines, so that what the vine loses is what was cut: leaf area, dry
/// mass of axes, the crop's share of the berries, and the counters that other rooms read.
/// </summary>
internal sealed class VineCuts(Scenario scenario, WorkTally tally)
{
    private readonly BerryGrowth _berries = new(scenario.Fruit);

    /// <summary>
    /// Cuts a shoot so that its lowest nodes stay; the buds of the nodes under the cut push their laterals.
    /// </summary>
    public void CutShoot(Vine vine, Shoot shoot, int nodes)
    {
        if (shoot.Phytomers.Count <= nodes) return;
        var lengthBefore = shoot.Length;
        var cut = shoot.CutAbove(nodes);
        // The axis is thinner towards the tip; its mass is held for the whole, so the cut takes it by length.
        var stem = lengthBefore > 0 ? shoot.StemDryMass * (lengthBefore - shoot.Length) / lengthBefore : 0;
        shoot.StemDryMass -= stem;
        tally.Count(shoot);
        Lose(vine, cut, stem);
        LateralRelease.UnderCut(shoot, scenario.Growth);
    }

    /// <summary>Takes a whole shoot off its vine.</summary>
    public void RemoveShoot(Vine vine, Shoot shoot)
    {
        vine.Remove(shoot);
        tally.Count(shoot);
        Lose(vine, shoot.Phytomers, shoot.StemDryMass);
    }

    /// <summary>Cuts the lateral of a node so that its lowest nodes stay; with none it goes whole.</summary>
    public void CutLateral(Vine vine, Phytomer bearer, int nodes)
    {
        if (bearer.Lateral is not { } lateral || lateral.Phytomers.Count <= nodes) return;
        if (nodes == 0)
        {
            RemoveLateral(vine, bearer);
            return;
        }

        var lengthBefore = lateral.Length;
        var cut = lateral.CutAbove(nodes);
        var stem = lengthBefore > 0 ? lateral.StemDryMass * (lengthBefore - lateral.Length) / lengthBefore : 0;
        lateral.StemDryMass -= stem;
        Lose(vine, cut, stem);
    }

    /// <summary>Takes the lateral of a node off with its base; the bud does not push again.</summary>
    public void RemoveLateral(Vine vine, Phytomer bearer)
    {
        if (bearer.Lateral is not { } lateral) return;
        bearer.Lateral = null;
        bearer.LateralRemoved = true;
        Lose(vine, lateral.Phytomers, lateral.StemDryMass);
    }

    /// <summary>Takes a leaf off; its node stays.</summary>
    public void RemoveLeaf(Vine vine, Phytomer phytomer)
    {
        if (phytomer.Leaf is not { } leaf) return;
        phytomer.Leaf = null;
        CountLeaf(leaf);
        Book(vine, leaf.Area, 0, 0, 0);
    }

    /// <summary>Cuts a cluster off.</summary>
    public void RemoveCluster(Vine vine, Phytomer phytomer)
    {
        if (phytomer.Cluster is not { } cluster) return;
        phytomer.Cluster = null;
        phytomer.ClusterRemoved = true;
        var (structure, sugar) = TakeFruit(vine, cluster);
        Book(vine, 0, 0, structure, sugar);
    }

    // Nodes that are off the vine already, with all that they bear.
    private void Lose(Vine vine, IReadOnlyList<Phytomer> cut, double stem)
    {
        var (area, structure, sugar) = (0.0, 0.0, 0.0);
        foreach (var phytomer in cut)
        {
            area += CountLeaf(phytomer.Leaf);
            if (phytomer.Lateral is { } lateral)
            {
                stem += lateral.StemDryMass;
                area += lateral.Phytomers.Sum(node => CountLeaf(node.Leaf));
            }

            if (phytomer.Cluster is not { } cluster) continue;
            var (structureCut, sugarCut) = TakeFruit(vine, cluster);
            (structure, sugar) = (structure + structureCut, sugar + sugarCut);
        }

        Book(vine, area, stem, structure, sugar);
    }

    private double CountLeaf(Leaf? leaf)
    {
        if (leaf is null) return 0;
        if (leaf.HasUnfolded) tally.Leaves++;
        return leaf.Area;
    }

    private (double Structure, double Sugar) TakeFruit(Vine vine, Cluster cluster)
    {
        tally.Clusters++;
        if (cluster.Berries is not { } berries || vine.Crop.Berries <= 0) return default;
        var share = Math.Min(1, berries / vine.Crop.Berries);
        tally.Fruit += share * _berries.FreshMass(vine.Crop);
        var structure = share * vine.Crop.StructureDryMass;
        var sugar = share * vine.Crop.Sugar;
        vine.Crop.StructureDryMass -= structure;
        vine.Crop.PotentialStructure -= share * vine.Crop.PotentialStructure;
        vine.Crop.Sugar -= sugar;
        vine.Crop.Berries = share < 1 ? vine.Crop.Berries - berries : 0;
        return (structure, sugar);
    }

    private void Book(Vine vine, double area, double stem, double structure, double sugar)
    {
        vine.RemovedLeafArea += area;
        tally.LeafArea += area;
        tally.Lost[vine.Id.Value] += new LostMass(area * scenario.Carbon.LeafMassPerArea, stem, structure, sugar);
        (tally.CanopyChanged, tally.AnythingDone) = (true, true);
    }
}
