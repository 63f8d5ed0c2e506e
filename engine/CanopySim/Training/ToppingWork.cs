using CanopySim.Carbon;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// Tops shoots: what stands beyond the height or the node count goes, the tip with it, and the buds of the nodes under the cut
/// push their laterals.
/// </summary>
public sealed class ToppingWork(Scenario scenario)
{
    // Laterals push on so many nodes under a cut (1 to 3, general, from memory; the fourth partly).
    private const int ReleasedNodes = 4;
    private const int LeastNodes = 3;

    private readonly ShootPath _path = new(scenario);
    private readonly HashSet<Topping> _done = [];

    /// <summary>Does what falls due on a day for the whole cell; returns the dry mass cut from each vine, in their order.</summary>
    public IReadOnlyList<LostMass> Apply(Canopy canopy, DateOnly date)
    {
        var lost = new LostMass[canopy.Vines.Count];
        foreach (var topping in scenario.CanopyWork.Topping)
        {
            if (_done.Contains(topping) || !IsDue(topping, canopy, date)) continue;
            _done.Add(topping);
            for (var i = 0; i < canopy.Vines.Count; i++)
                foreach (var shoot in canopy.Vines[i].Shoots)
                    lost[i] += Cut(canopy.Vines[i], shoot, NodesKept(topping, shoot));
        }

        return lost;
    }

    private static bool IsDue(Topping topping, Canopy canopy, DateOnly date)
    {
        if (topping.On is { } day) return date == day;
        var shoots = canopy.PrimaryShoots().ToList();
        return shoots.Count > 0 && shoots.Average(shoot => shoot.Length) >= topping.WhenShootsReach;
    }

    private int NodesKept(Topping topping, Shoot shoot)
    {
        if (topping.Nodes is { } nodes) return Math.Max(LeastNodes, nodes);
        var points = _path.Nodes(shoot);
        // Above the cut on a hedge; below it where shoots hang. A cut over the cordon misses what hangs, one under it what stands.
        var wall = TrellisLayout.WallOf(scenario, shoot);
        var hangs = wall.Hangs || wall.IsFlat;
        if (hangs ? topping.Height > wall.CordonHeight : topping.Height < wall.CordonHeight) return shoot.Phytomers.Count;
        for (var i = 1; i < points.Length; i++)
            if (hangs ? points[i].Z < topping.Height : points[i].Z > topping.Height)
                return Math.Max(LeastNodes, i - 1);
        return shoot.Phytomers.Count;
    }

    private LostMass Cut(Vine vine, Shoot shoot, int nodes)
    {
        if (shoot.Phytomers.Count <= nodes) return default;
        var lengthBefore = shoot.Length;
        var cut = shoot.CutAbove(nodes);
        // The axis is thinner towards the tip; its mass is held for the whole, so the cut takes it by length.
        var stem = lengthBefore > 0 ? shoot.StemDryMass * (lengthBefore - shoot.Length) / lengthBefore : 0;
        shoot.StemDryMass -= stem;
        var (area, structure, sugar) = (0.0, 0.0, 0.0);
        foreach (var phytomer in cut)
        {
            area += phytomer.Leaf?.Area ?? 0;
            if (phytomer.Lateral is { } lateral)
            {
                stem += lateral.StemDryMass;
                area += lateral.Phytomers.Sum(node => node.Leaf?.Area ?? 0);
            }

            if (phytomer.Cluster?.Berries is not { } berries || vine.Crop.Berries <= 0) continue;
            var share = berries / vine.Crop.Berries;
            structure += share * vine.Crop.StructureDryMass;
            sugar += share * vine.Crop.Sugar;
            vine.Crop.StructureDryMass -= share * vine.Crop.StructureDryMass;
            vine.Crop.PotentialStructure -= share * vine.Crop.PotentialStructure;
            vine.Crop.Sugar -= share * vine.Crop.Sugar;
            vine.Crop.Berries -= berries;
        }

        vine.RemovedLeafArea += area;
        foreach (var phytomer in shoot.Phytomers.TakeLast(ReleasedNodes))
        {
            phytomer.Released = true;
            if (phytomer.Lateral is { } lateral) lateral.Release = scenario.Growth.LateralReleaseByTopping;
        }

        return new LostMass(area * scenario.Carbon.LeafMassPerArea, stem, structure, sugar);
    }
}
