using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// Breaks out shoots until as many stay as the step says, on every vine, and on every wall of it where the count is
/// per metre of canopy.
/// </summary>
internal sealed class ShootThinningWork(WorkPlace place, ShootThinning step) : IWork
{
    // Gaps that differ by less are alike [m].
    private const double AlikeGap = 1e-3;

    public WorkStep Step => step;

    public string Words =>
        (step.ShootsPerVine is { } count
            ? FormattableString.Invariant($"shoots thinned to {count} a vine")
            : FormattableString.Invariant($"shoots thinned to {step.ShootsPerMeter:0.##} per m of canopy"))
        + (step.First == ThinningOrder.Weakest ? ", the weakest first" : ", the crowded first");

    public void Do(Canopy canopy, WorkTally tally)
    {
        var cuts = new VineCuts(place.Scenario, tally);
        var tooFew = false;
        foreach (var vine in canopy.Vines)
        {
            foreach (var (shoots, kept) in Groups(vine))
            {
                tooFew |= shoots.Count < kept;
                while (shoots.Count > kept)
                {
                    var next = Next(canopy, shoots);
                    shoots.Remove(next);
                    cuts.RemoveShoot(vine, next);
                }
            }
        }

        if (tooFew) tally.Warn("a vine bore fewer shoots than should stay");
        else if (!tally.AnythingDone) tally.Warn("no vine bore more shoots than should stay, so none was taken");
    }

    private IEnumerable<(List<Shoot> Shoots, int Kept)> Groups(Vine vine)
    {
        if (step.ShootsPerVine is { } count)
        {
            yield return ([.. vine.Shoots], count);
            yield break;
        }

        var kept = (int)Math.Round(
            (step.ShootsPerMeter ?? 0) * place.Scenario.Rows.VineSpacing, MidpointRounding.AwayFromZero);
        foreach (var wall in place.Walls)
            yield return ([.. vine.Shoots.Where(shoot => shoot.Wall == wall.Index)], Math.Max(1, kept));
    }

    private Shoot Next(Canopy canopy, List<Shoot> shoots) => step.First == ThinningOrder.Weakest
        ? shoots.OrderBy(shoot => shoot.Length).ThenBy(shoot => shoot.Id.Value).First()
        : shoots.OrderBy(shoot => Math.Round(Gap(canopy, shoot) / AlikeGap)).ThenBy(shoot => shoot.Length)
            .ThenBy(shoot => shoot.Id.Value).First();

    // Distance between the neighbors on both sides along the wall [m]; the row repeats itself beyond the cell.
    private double Gap(Canopy canopy, Shoot shoot)
    {
        var (along, rows) = (place.Places.Cell.Along, place.Scenario.Rows);
        var (before, after) = (along, along);
        foreach (var other in canopy.PrimaryShoots())
        {
            if (other == shoot || other.Wall != shoot.Wall || rows.RowOf(other.Vine) != rows.RowOf(shoot.Vine))
                continue;
            var ahead = (((other.PositionAlongRow - shoot.PositionAlongRow) % along) + along) % along;
            (before, after) = (Math.Min(before, along - ahead), Math.Min(after, ahead));
        }

        return before + after;
    }
}
