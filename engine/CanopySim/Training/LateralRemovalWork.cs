using CanopySim.Numerics;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// Takes off laterals whose node lies in the zone, the share whose seeded numbers are the smallest; their buds do not
/// push again.
/// </summary>
internal sealed class LateralRemovalWork(WorkPlace place, LateralRemoval step, int index) : IWork
{
    public WorkStep Step => step;

    public string Words =>
        FormattableString.Invariant(
            $"{100 * step.Share:0.#} % of the laterals taken off {ZoneWords.Of(step.From, step.To)}");

    public void Do(Canopy canopy, WorkTally tally)
    {
        var cuts = new VineCuts(place.Scenario, tally);
        var there = canopy.Vines.SelectMany(vine => vine.Shoots.SelectMany(Here).Select(bearer => (vine, bearer)))
            .ToList();
        var taken = there
            .OrderBy(found =>
                SeededValue.Uniform(place.Scenario.Seed, "lateral removal", found.bearer.Lateral!.Id.Value, index))
            .Take((int)Math.Round(step.Share * there.Count, MidpointRounding.AwayFromZero))
            .ToList();
        foreach (var (vine, bearer) in taken) cuts.RemoveLateral(vine, bearer);
        if (taken.Count > 0) return;
        tally.Warn(there.Count == 0
            ? $"no lateral stood {ZoneWords.Of(step.From, step.To)}, so none was taken off"
            : FormattableString.Invariant(
                $"a share of {step.Share:0.###} of the {there.Count} laterals there is less than one, so none was taken off"));
    }

    public bool Overlaps(IWork other) =>
        other is LateralRemovalWork work && StepsOverlap.Of(step, (LateralRemoval)work.Step, place);

    private IEnumerable<Phytomer> Here(Shoot shoot)
    {
        var wall = place.WallOf(shoot);
        var (from, to) = step.Within(wall);
        var points = place.Places.Nodes(shoot);
        for (var i = 0; i < shoot.Phytomers.Count; i++)
        {
            // A lateral without a node is a bud yet.
            if (shoot.Phytomers[i].Lateral is not { Phytomers.Count: > 0 }) continue;
            var at = place.PlaceOf(shoot, points[i + 1]);
            if (at.HeightOverCordon >= from && at.HeightOverCordon <= to) yield return shoot.Phytomers[i];
        }
    }
}
