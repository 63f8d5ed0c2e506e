namespace CanopySim.Light;

/// <summary>
/// Where the light of one band went [W per m² of horizontal ground]. Each term is summed on its own: <see cref="Reflected"/>
/// from what leaves towards the sky, never as a difference.
/// </summary>
public readonly record struct LightBudget(
    double IncidentDirect,
    double IncidentDiffuse,
    double AbsorbedLeaves,
    double AbsorbedWood,
    double AbsorbedClusters,
    double AbsorbedGround,
    double Reflected)
{
    public double Incident => IncidentDirect + IncidentDiffuse;

    /// <summary>Share of the incident light that the other terms do not account for; 0 in the dark.</summary>
    public double Closure => Incident > 0
        ? Math.Abs(Incident - (AbsorbedLeaves + AbsorbedWood + AbsorbedClusters + AbsorbedGround + Reflected)) / Incident
        : 0;
}
