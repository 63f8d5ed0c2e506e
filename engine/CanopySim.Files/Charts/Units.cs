namespace CanopySim.Files.Charts;

/// <summary>The units of screens and reports; result files are always metric.</summary>
public enum Units
{
    Metric,
    Us,
}
