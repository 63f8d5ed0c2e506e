namespace CanopySim.Sampling;

/// <summary>How confidence intervals are made.</summary>
public sealed record BootstrapSettings
{
    /// <summary>Address of the draws: the same seed gives the same intervals.</summary>
    public ulong Seed { get; init; }

    /// <summary>Number of draws.</summary>
    public int Draws { get; init; } = 1000;

    /// <summary>Share of intervals that hold the true value.</summary>
    public double Confidence { get; init; } = 0.95;
}
