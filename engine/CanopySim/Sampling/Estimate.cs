namespace CanopySim.Sampling;

/// <summary>A number estimated from a sample, and the ends of its confidence interval.</summary>
public readonly record struct Estimate(double Value, double Low, double High);
