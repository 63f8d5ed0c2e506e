using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// Pulls leaves: of the unfolded leaves whose middle lies in the zone and on the side, the share goes whose seeded
/// numbers are the smallest. Nodes, buds and clusters stay.
/// </summary>
internal sealed class LeafRemovalWork(WorkPlace place, LeafRemoval step, int index) : IWork
{
    public WorkStep Step => step;

    public string Words => FormattableString.Invariant(
        $"{100 * step.Share:0.#} % of the leaves pulled {ZoneWords.Of(step.From, step.To)}, {SideWords}{LateralWords}");

    private string LateralWords => step.Laterals ? "" : ", leaves of laterals left";

    private string SideWords => step.Side switch
    {
        CanopySide.Both => "both sides",
        CanopySide.Right => "right side",
        CanopySide.Left => "left side",
        CanopySide.Morning => "morning side",
        _ => "afternoon side",
    };

    public void Do(Canopy canopy, WorkTally tally)
    {
        var cuts = new VineCuts(place.Scenario, tally);
        var there = canopy.Vines.SelectMany(vine => vine.Shoots.SelectMany(Here).Select(blade => (vine, blade)))
            .ToList();
        var taken = there
            .OrderBy(found =>
                SeededValue.Uniform(place.Scenario.Seed, "leaf removal", found.blade.Leaf.Id.Value, index))
            .Take((int)Math.Round(step.Share * there.Count, MidpointRounding.AwayFromZero))
            .ToList();
        foreach (var (vine, blade) in taken) cuts.RemoveLeaf(vine, blade.Phytomer);
        if (taken.Count > 0) return;
        tally.Warn(there.Count == 0
            ? $"no unfolded leaf hung {ZoneWords.Of(step.From, step.To)} ({SideWords}), so none was pulled"
            : FormattableString.Invariant(
                $"a share of {step.Share:0.###} of the {there.Count} leaves there is less than one leaf, so none was pulled"));
    }

    public bool Overlaps(IWork other) =>
        other is LeafRemovalWork work && StepsOverlap.Of(step, (LeafRemoval)work.Step, place);

    private IEnumerable<PlacedBlade> Here(Shoot shoot)
    {
        var wall = place.WallOf(shoot);
        var (from, to) = step.Within(wall);
        foreach (var blade in place.Places.Blades(shoot))
        {
            if (!blade.Leaf.HasUnfolded || (!step.Laterals && blade.Leaf.Shoot.Order > 1)) continue;
            var at = place.PlaceOf(shoot, blade.Middle);
            if (at.HeightOverCordon < from || at.HeightOverCordon > to) continue;
            if (RowSides.IsOn(step.Side, at.IsRight, place.Scenario.Rows.Azimuth)) yield return blade;
        }
    }
}
