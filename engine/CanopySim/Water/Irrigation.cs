using CanopySim.Parameters;
using CanopySim.Training;

namespace CanopySim.Water;

/// <summary>One irrigation.</summary>
public sealed record Irrigation : WorkStep
{
    [Parameter("mm", 0.5, 200, "Water given, over the whole ground.", Mark = Mark.Given)]
    public required double Amount { get; init; }
}
