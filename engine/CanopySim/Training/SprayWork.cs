using CanopySim.Plants;
using CanopySim.Protection;

namespace CanopySim.Training;

/// <summary>
/// Marks the area of every leaf whose middle lies in the zone as sprayed; what unfolds or expands later is not.
/// </summary>
internal sealed class SprayWork(WorkPlace place, Spray step, int number) : IWork
{
    public WorkStep Step => step;

    public string Words =>
        step.From is null && step.To is null
            ? $"sprayed: {step.Label}"
            : $"sprayed: {step.Label}, {ZoneWords.Of(step.From, step.To, whole: true)}";

    public void Do(Canopy canopy, WorkTally tally)
    {
        var (from, to) = (step.From ?? double.NegativeInfinity, step.To ?? double.PositiveInfinity);
        foreach (var shoot in canopy.PrimaryShoots())
        {
            foreach (var blade in place.Places.Blades(shoot))
            {
                var at = place.PlaceOf(shoot, blade.Middle);
                if (at.HeightOverCordon < from || at.HeightOverCordon > to) continue;
                blade.Leaf.Mark(number);
                if (blade.Leaf.HasUnfolded) tally.Leaves++;
                tally.LeafArea += blade.Leaf.Area;
                tally.AnythingDone = true;
            }
        }

        if (!tally.AnythingDone)
            tally.Warn($"no leaf hung {ZoneWords.Of(step.From, step.To, whole: true)}, so none was sprayed");
    }

    /// <summary>The spray on the day on which it was done.</summary>
    public SprayOnDay On(DateOnly date) => new(number, step.Label, date, step.Kind);

    public bool Overlaps(IWork other) => false;
}
