using CanopySim.Sampling;

namespace CanopySim.Files.Batch.Report;

/// <summary>What the keys of a design do to a quantity of a scenario: effects by Morris, or shares of variance by Sobol.</summary>
/// <param name="Outcome">The quantity.</param>
/// <param name="Keys">The keys, in the order of the design.</param>
/// <param name="Morris">Null for another design.</param>
/// <param name="Sobol">Null for another design.</param>
public sealed record Sensitivity(Outcome Outcome, IReadOnlyList<string> Keys, MorrisEffects? Morris, SobolIndices? Sobol)
{
    /// <summary>Rows of the design that counted, and those that were dropped because a season of them failed or lacks the quantity.</summary>
    public (int Used, int Dropped) Rows =>
        Morris is { } effects ? (effects.Trajectories, effects.DroppedTrajectories) : (Sobol!.Rows, Sobol.DroppedRows);

    /// <summary>False where nothing can be said: no whole row, or an output that does not vary.</summary>
    public bool IsKnown => (Morris?.Factors.Count ?? Sobol!.Factors.Count) > 0;

    /// <summary>The keys with the largest influence first, by mu* or total order.</summary>
    public IReadOnlyList<int> Ranked => [.. Enumerable.Range(0, Keys.Count)
        .OrderByDescending(key => Morris is { } effects ? effects.Factors[key].MuStar.Value : Sobol!.Factors[key].Total.Value)];

    /// <summary>True where a design tells sensitivities.</summary>
    public static bool IsToldBy(PlanDesign? design) => design is { Kind: DesignKind.Morris or DesignKind.Saltelli };

    /// <summary>The sensitivities of a quantity, of the mean over weather, lists and replicates at each point of the design.</summary>
    public static Sensitivity Of(Ensemble ensemble, Outcome outcome, BatchPlan plan, PlanItems items)
    {
        var outputs = ensemble.ByPoint(outcome, items);
        var settings = new BootstrapSettings { Seed = plan.Seed };
        IReadOnlyList<string> keys = [.. plan.Varied.Where(key => key.Distribution is not null).Select(key => key.Key)];
        return plan.Design!.Kind == DesignKind.Morris
            ? new Sensitivity(outcome, keys, MorrisEffects.Of([.. items.Points], outputs, settings), null)
            : new Sensitivity(outcome, keys, null, SobolIndices.Of(outputs, keys.Count, settings));
    }
}
