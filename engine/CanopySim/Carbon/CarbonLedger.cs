namespace CanopySim.Carbon;

/// <summary>
/// The day's account of a vine [g C]: what came in and went out by flows, against what the organs hold before and after.
/// Closure sees a flow that was lost, not a wrong sink.
/// </summary>
public readonly record struct CarbonLedger(
    double StockBefore, double StockAfter, double NetAssimilation, double MaintenanceRespiration, double GrowthRespiration, double Lost)
{
    /// <summary>All respiration but the leaves' own [g C].</summary>
    public double Respiration => MaintenanceRespiration + GrowthRespiration;

    /// <summary>What the account misses, over the day's turnover [1].</summary>
    public double RelativeClosure
    {
        get
        {
            var turnover = Math.Abs(NetAssimilation) + Respiration + Lost;
            var missing = Math.Abs(NetAssimilation - Respiration - Lost - (StockAfter - StockBefore));
            // The stock is a sum of thousands of parts: below its rounding there is nothing to close.
            return missing / Math.Max(turnover, 1e-3 * Math.Max(StockBefore, StockAfter));
        }
    }

    /// <summary>Carbon of lost dry mass [g C].</summary>
    public static double CarbonOf(LostMass lost) =>
        (lost.Leaf * CarbonContent.Leaf) + (lost.Stem * CarbonContent.Wood)
        + (lost.FruitStructure * CarbonContent.FruitStructure) + (lost.Sugar * CarbonContent.Carbohydrate);
}
