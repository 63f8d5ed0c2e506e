using CanopySim.Plants;

namespace CanopySim.Growth;

/// <summary>
/// Nodes appear and laterals break, in thermal time, as water and carbon allow. The rates of nodes and of laterals answer two
/// indices of carbon supply: one index for both fails, since shoots must grow in spring when it is low and stop in July when
/// it is high.
/// </summary>
public sealed class ShootDevelopment(GrowthParameters growth, Canopy canopy)
{
    // A tip stops for good when five days after bloom bring less than this many nodes a day. Assumed.
    private const double StoppingRate = 0.07;
    private const int StoppingDays = 5;

    // Green tip: one node free and the next half way. Assumed.
    private const double NodesAtBudbreak = 1.5;

    // Laterals at rhythm position 0 are faster: Lebon et al. 2004; the sizes of the two factors are assumed.
    private const double LateralRateAtP0 = 1.5;
    private const double LateralRateElsewhere = 0.75;

    // Supply index of the main axes under which no node comes, and from which all do. Assumed, the upper one lowered while vines of
    // 36, 191 and 314 shoots and nodes at bloom were looked at: main axes go on whatever the crop (Pallas et al. 2009).
    private const double NoNodesBelow = 0.15;
    private const double AllNodesFrom = 0.5;

    // The same of all sinks, for laterals. Assumed, from an earlier study of ours.
    private const double NoLateralsBelow = 0.35;
    private const double AllLateralsFrom = 1.0;

    // Internodes of laterals. Assumed.
    private const double LateralInternode = 0.03;
    private const double FirstLateralLeafShare = 0.7;

    /// <summary>Puts the first nodes on a shoot whose bud breaks.</summary>
    public void Break(Shoot shoot)
    {
        shoot.NodeProgress = NodesAtBudbreak;
        AddNodes(shoot);
    }

    /// <summary>Adds the day's nodes and laterals to a vine.</summary>
    public void Advance(Vine vine, GrowthConditions day)
    {
        var decline = day.ThermalUnitsSinceBloom is { } units ? Math.Exp(-units / growth.DeclineAfterBloom) : 1;
        var mainSupply = Ramp(vine.Carbon.MainSupplyIndex, NoNodesBelow, AllNodesFrom);
        var lateralSupply = Ramp(vine.Carbon.SupplyIndex, NoLateralsBelow, AllLateralsFrom);
        foreach (var shoot in vine.Shoots)
        {
            AdvanceTip(shoot, day, decline * mainSupply * day.NodeWater * Math.Sqrt(shoot.Vigor));
            foreach (var phytomer in shoot.Phytomers)
            {
                phytomer.ThermalAge += day.ThermalUnits;
                var rate = LateralPace(phytomer, decline, day) * lateralSupply * day.LateralWater * shoot.Vigor;
                AdvanceLateral(shoot, phytomer, day, rate);
            }
        }
    }

    private void AdvanceTip(Shoot shoot, GrowthConditions day, double factor)
    {
        if (shoot.TipStopped) return;
        var phyllochron = shoot.NodeProgress < growth.PreformedNodes ? growth.PreformedPhyllochron : growth.Phyllochron;
        var progress = factor * day.ThermalUnits / phyllochron;
        shoot.NodeProgress += progress;
        AddNodes(shoot);
        if (day.ThermalUnitsSinceBloom is null) return;
        shoot.RecentProgress.Enqueue(progress);
        if (shoot.RecentProgress.Count > StoppingDays) shoot.RecentProgress.Dequeue();
        shoot.TipStopped = shoot.RecentProgress.Count == StoppingDays && shoot.RecentProgress.Sum() < StoppingRate * StoppingDays;
    }

    // After bloom laterals slow with the tips. One that a cut set free goes on nearly as in spring, until what it let go is spent.
    private double LateralPace(Phytomer phytomer, double decline, GrowthConditions day)
    {
        if (!phytomer.Released) return decline;
        phytomer.UnitsSinceRelease += day.ThermalUnits;
        var sinceBloom = day.ThermalUnitsSinceBloom ?? 0;
        return Math.Max(
            decline,
            phytomer.ReleaseStrength * Math.Exp((-sinceBloom / growth.ReleasedDecline) - (phytomer.UnitsSinceRelease / growth.DeclineAfterBloom)));
    }

    private void AdvanceLateral(Shoot shoot, Phytomer phytomer, GrowthConditions day, double factor)
    {
        if ((phytomer.ThermalAge < growth.LateralDelay && !phytomer.Released) || growth.LateralLeaves == 0) return;
        if (phytomer.LateralRemoved) return;
        phytomer.Lateral ??= new Shoot(canopy.NextShootId(), shoot.Vine, order: 2, shoot.PositionAlongRow, shoot.Vigor, shoot.Wall)
        {
            Release = phytomer.Released ? growth.LateralReleaseByTopping : 1,
        };
        var lateral = phytomer.Lateral;
        foreach (var node in lateral.Phytomers) node.ThermalAge += day.ThermalUnits;
        if (lateral.TipStopped) return;
        var place = phytomer.RhythmPosition == 0 ? LateralRateAtP0 : LateralRateElsewhere;
        lateral.NodeProgress += growth.LateralRate * place * lateral.Release * factor * day.ThermalUnits / growth.Phyllochron;
        AddNodes(lateral);
        lateral.TipStopped = lateral.Phytomers.Count >= growth.LateralLeaves;
    }

    private void AddNodes(Shoot shoot)
    {
        var limit = shoot.Order == 1 ? int.MaxValue : growth.LateralLeaves;
        while (shoot.Phytomers.Count < Math.Min(limit, (int)shoot.NodeProgress))
        {
            var rank = shoot.Phytomers.Count + 1;
            var size = Math.Sqrt(shoot.Vigor);
            var (blade, internode) = shoot.Order == 1
                ? (growth.PotentialBladeArea * 1e-4 * RankProfile.Blade(rank), growth.PotentialInternode * 1e-2 * RankProfile.Internode(rank))
                : (growth.LateralBladeArea * 1e-4 * (rank == 1 ? FirstLateralLeafShare : 1), LateralInternode);
            shoot.Add(new Phytomer(rank, internode * size, new Leaf(canopy.NextLeafId(), shoot, rank, blade * size)));
        }
    }

    private static double Ramp(double value, double zeroAt, double oneAt) => Math.Clamp((value - zeroAt) / (oneAt - zeroAt), 0, 1);
}
