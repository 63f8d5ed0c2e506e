using CanopySim.Training;

namespace CanopySim.Fitting;

/// <summary>Something that a grower can still do.</summary>
/// <param name="Name">Its key in results.</param>
/// <param name="Day">When it would be done.</param>
/// <param name="Words">What it is, in the reader's words, without the day.</param>
/// <param name="Change">The block with it.</param>
public sealed record VineOption(string Name, DateOnly Day, string Words, Func<Scenario, Scenario> Change)
{
    // What is cut, how far over the top wire [m], and when after bloom [d]; common practice, no source.
    private const double ShootsKept = 0.75;
    private const int NodesKept = 12;
    private const double AboveTopWire = 0.1;
    private const int DaysToTopping = 14;
    private const double LeavesPulled = 0.6;
    private const int DaysToPulling = 25;
    private const double ClustersCut = 0.3;
    private const int DaysToClusterThinning = 30;

    // Shoots are thinned before they are long: this long before bloom at the latest [d].
    private const int LeastDaysToBloom = 7;

    /// <summary>What can still be done after a day, and has a meaning then.</summary>
    /// <param name="scenario">The block, with what was done and is planned.</param>
    /// <param name="asOf">The day.</param>
    /// <param name="bloom">Most likely day of bloom; null where it is not reached.</param>
    /// <param name="veraison">The same of veraison.</param>
    public static IReadOnlyList<VineOption> After(Scenario scenario, DateOnly asOf, DateOnly? bloom, DateOnly? veraison)
    {
        if (bloom is not { } flowers || veraison is not { } turns) return [];
        var options = new List<VineOption>();
        var next = asOf.AddDays(1);
        if (asOf < flowers.AddDays(-LeastDaysToBloom))
        {
            var kept = ShootsKept * scenario.CanopyWork.ShootsPerMeter;
            options.Add(new VineOption(
                "shoot_thinning", next, FormattableString.Invariant($"thin the shoots to {kept:0.#} a meter"),
                block => block with
                {
                    CanopyWork = block.CanopyWork with
                    {
                        ShootThinning = [.. block.CanopyWork.ShootThinning, new ShootThinning { On = next, ShootsPerMeter = kept }],
                    },
                }));
        }

        if (Due(DaysToTopping) is var top && top < turns)
        {
            // Along wires a grower cuts at a height; where shoots hang, some of them or all, at a length.
            var step = TrellisKeys.HasWalls(scenario.Trellis.Form) && scenario.Trellis.Form != TrellisForm.UpAndDown
                ? new Topping { On = top, Height = scenario.Trellis.TopWireHeightOrDefault + AboveTopWire }
                : new Topping { On = top, Nodes = NodesKept };
            var where = step.Height is { } height
                ? FormattableString.Invariant($"{height:0.0#} m over the ground")
                : FormattableString.Invariant($"{NodesKept} nodes");
            options.Add(new VineOption(
                "topping", top, $"top the shoots at {where}",
                block => block with
                {
                    CanopyWork = block.CanopyWork with { Topping = [.. block.CanopyWork.Topping, step] },
                }));
        }

        if (Due(DaysToPulling) is var pull && pull < turns)
        {
            var side = RowSides.IsRightInTheMorning(scenario.Rows.Azimuth) is null ? CanopySide.Both : CanopySide.Morning;
            var words = side == CanopySide.Morning ? "on the morning side of the fruit" : "about the fruit";
            options.Add(new VineOption(
                "leaf_pulling", pull, FormattableString.Invariant($"pull {100 * LeavesPulled:0} % of the leaves {words}"),
                block => block with
                {
                    CanopyWork = block.CanopyWork with
                    {
                        LeafRemoval =
                            [.. block.CanopyWork.LeafRemoval, new LeafRemoval { On = pull, Share = LeavesPulled, Side = side }],
                    },
                }));
        }

        if (Due(DaysToClusterThinning) is var cut && cut < turns.AddDays(DaysToTopping))
        {
            options.Add(new VineOption(
                "cluster_thinning", cut, FormattableString.Invariant($"take off {100 * ClustersCut:0} % of the clusters"),
                block => block with
                {
                    CanopyWork = block.CanopyWork with
                    {
                        ClusterThinning =
                            [.. block.CanopyWork.ClusterThinning, new ClusterThinning { On = cut, Share = ClustersCut }],
                    },
                }));
        }

        return options;

        DateOnly Due(int daysAfterBloom) => flowers.AddDays(daysAfterBloom) is var day && day > asOf ? day : next;
    }
}
