using CanopySim.Geometry;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// Tops shoots: what stands beyond the height or the node count goes, the tip with it, and the buds of the nodes under
/// the cut push their laterals. Where shoots hang or lie as a roof, what is lower than the height goes. A height cuts
/// laterals too.
/// </summary>
internal sealed class ToppingWork(WorkPlace place, Topping step) : IWork
{
    private const int LeastNodes = 3;

    public WorkStep Step => step;

    public bool Overlaps(IWork other) =>
        other.Step is Topping topping && StepsOverlap.Of(step, topping, place.Scenario.Trellis);

    public string Words => step.Nodes is { } nodes
        ? FormattableString.Invariant($"shoots topped at {nodes} nodes")
        : FormattableString.Invariant($"shoots topped {step.Height:0.##} m over the ground");

    public void Do(Canopy canopy, WorkTally tally)
    {
        var cuts = new VineCuts(place.Scenario, tally);
        foreach (var vine in canopy.Vines)
        {
            foreach (var shoot in vine.Shoots)
            {
                cuts.CutShoot(vine, shoot, NodesKept(shoot));
                if (step.Height is { } height && Meets(place.WallOf(shoot), height)) CutLaterals(cuts, vine, shoot);
            }
        }

        if (tally.AnythingDone) return;
        tally.Warn(step.Nodes is { } nodes
            ? FormattableString.Invariant(
                $"no shoot had more than {Math.Max(LeastNodes, nodes)} nodes, so nothing was cut")
            : FormattableString.Invariant(
                $"no shoot reached beyond {step.Height:0.##} m over the ground, so nothing was cut"));
    }

    /// <summary>
    /// True where a cut at a height, or by nodes where there is none, can meet a wall: over its cordon where shoots
    /// stand, under it where they hang.
    /// </summary>
    internal static bool Meets(FoliageWall wall, double? height) =>
        height is null || (wall.Hangs || wall.IsFlat ? height <= wall.CordonHeight : height >= wall.CordonHeight);

    private int NodesKept(Shoot shoot)
    {
        if (step.Nodes is { } nodes) return Math.Max(LeastNodes, nodes);
        if (!Meets(place.WallOf(shoot), step.Height ?? 0)) return shoot.Phytomers.Count;
        var points = place.Places.Nodes(shoot);
        for (var i = 1; i < points.Length; i++)
            if (IsBeyond(shoot, points[i])) return Math.Max(LeastNodes, i - 1);
        return shoot.Phytomers.Count;
    }

    private void CutLaterals(VineCuts cuts, Vine vine, Shoot shoot)
    {
        var points = place.Places.Nodes(shoot);
        for (var i = 0; i < shoot.Phytomers.Count; i++)
        {
            if (shoot.Phytomers[i].Lateral is not { } lateral || IsBeyond(shoot, points[i + 1])) continue;
            var axis = CanopyPlaces.Axis(points, i);
            var kept = place.Places.LateralNodes(lateral, points[i + 1], axis, shoot.Phytomers[i].Rank)
                .TakeWhile(node => !IsBeyond(shoot, node.At)).Count();
            // The cutters miss the base, which is under the cut.
            cuts.CutLateral(vine, shoot.Phytomers[i], Math.Max(1, kept));
        }
    }

    private bool IsBeyond(Shoot shoot, System.Numerics.Vector3 point)
    {
        var wall = place.WallOf(shoot);
        var height = place.Places.HeightOverGround(point);
        return wall.Hangs || wall.IsFlat ? height < step.Height : height > step.Height;
    }
}
