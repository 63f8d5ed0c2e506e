using CanopySim.Parameters;

namespace CanopySim.Training;

/// <summary>A pair of wires, one on either side of a wall, that keeps shoots between them.</summary>
public readonly record struct CatchWirePair(
    [property: Parameter("m", 0.3, 3.5, "Height of the pair over the ground.", Mark = Mark.Given)] double Height,
    [property: Parameter("m", 0.05, 3, "Distance between its two wires.", Mark = Mark.Given)] double Distance);
