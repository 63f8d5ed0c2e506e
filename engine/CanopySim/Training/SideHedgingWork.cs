using CanopySim.Geometry;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// Cuts along both sides of every wall of foliage: of what stands farther from its middle plane than half the width,
/// shoots and laterals go from the last node inside, blades where their middle is outside. A shoot whose base is
/// outside goes whole.
/// </summary>
internal sealed class SideHedgingWork(WorkPlace place, SideHedging step) : IWork
{
    // A cut shoot weighs less and straightens: it is cut again where that brings it out, each time by a node at least.
    private const int MostPasses = 200;

    public WorkStep Step => step;

    public string Words => FormattableString.Invariant($"sides cut to {step.Width:0.##} m");

    public void Do(Canopy canopy, WorkTally tally)
    {
        var cuts = new VineCuts(place.Scenario, tally);
        foreach (var vine in canopy.Vines)
        {
            foreach (var shoot in vine.Shoots.ToList())
            {
                if (!CutShoot(cuts, vine, shoot)) continue;
                CutLaterals(cuts, vine, shoot);
                foreach (var blade in place.Places.Blades(shoot).ToList())
                    if (IsOutside(shoot, blade.Middle)) cuts.RemoveLeaf(vine, blade.Phytomer);
            }
        }

        if (!tally.AnythingDone)
            tally.Warn(FormattableString.Invariant($"nothing stood beyond {step.Width:0.##} m, so nothing was cut"));
        var wires = place.Walls.Where(wall => wall.IsHeld && !wall.IsFlat).Select(wall => wall.Width).DefaultIfEmpty().Max();
        if (step.Width < wires)
            tally.Warn(FormattableString.Invariant(
                $"the cut is narrower than the {wires:0.##} m that the wires leave to the shoots: cutters would meet them"));
    }

    // False where the whole shoot went.
    private bool CutShoot(VineCuts cuts, Vine vine, Shoot shoot)
    {
        for (var pass = 0; pass < MostPasses; pass++)
        {
            var points = place.Places.Nodes(shoot);
            var inside = points.TakeWhile(point => !IsOutside(shoot, point)).Count() - 1;
            if (inside == shoot.Phytomers.Count) return true;
            if (inside <= 0)
            {
                cuts.RemoveShoot(vine, shoot);
                return false;
            }

            cuts.CutShoot(vine, shoot, inside);
        }

        return true;
    }

    private void CutLaterals(VineCuts cuts, Vine vine, Shoot shoot)
    {
        var points = place.Places.Nodes(shoot);
        for (var i = 0; i < shoot.Phytomers.Count; i++)
        {
            var phytomer = shoot.Phytomers[i];
            if (phytomer.Lateral is not { } lateral) continue;
            var inside = place.Places.LateralNodes(lateral, points[i + 1], CanopyPlaces.Axis(points, i), phytomer.Rank)
                .TakeWhile(node => !IsOutside(shoot, node.At)).Count();
            cuts.CutLateral(vine, phytomer, inside);
        }
    }

    private bool IsOutside(Shoot shoot, System.Numerics.Vector3 point) =>
        place.PlaceOf(shoot, point).Distance > 0.5 * step.Width;
}
