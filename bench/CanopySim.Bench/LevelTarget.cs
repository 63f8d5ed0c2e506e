namespace CanopySim.Bench;

/// <summary>What a level promises; all but days as shares.</summary>
/// <param name="LeafError">Root mean square over leaves of a day's PAR, relative to the mean leaf.</param>
/// <param name="Bias">All leaves together.</param>
/// <param name="Closure">Widest gap of a budget.</param>
/// <param name="Carbon">Of the season, against fine.</param>
/// <param name="Days">Of ripeness, against fine.</param>
internal sealed record LevelTarget(double LeafError, double Bias, double Closure, double Carbon, int Days)
{
    /// <summary>Null for fine, which the others are compared with.</summary>
    public static LevelTarget? For(Quality quality) => quality switch
    {
        Quality.Draft => new(0.06, 0.005, 1e-3, 0.02, 1),
        Quality.Standard => new(0.02, 0.001, 3e-4, 0.003, 0),
        _ => null,
    };
}
