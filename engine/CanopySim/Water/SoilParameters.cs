using CanopySim.Parameters;

namespace CanopySim.Water;

/// <summary>The soil's store of water and irrigation.</summary>
public sealed record SoilParameters
{
    [Parameter("mm", 20, 600, "Water that the roots can take, between field capacity and the wilting point.", Mark = Mark.Recalled,
        Source = "70 to 300 mm, typically 100 to 250: Lebon 2003, Pellegrino 2005")]
    public double TranspirableWater { get; init; } = 200;

    [Parameter("1", 0, 1, "Share of it that is there on the first day.", Mark = Mark.Assumed)]
    public double InitialShare { get; init; } = 1;

    [Parameter("mm/d", 0, 3, "Evaporation of bare moist soil and cover beside the vines, a day at most.", Mark = Mark.Assumed)]
    public double GroundEvaporation { get; init; } = 0.8;

    [Parameter("1", 0, 1, "Share of transpirable water at which irrigation starts; 0 for none.", Mark = Mark.Given)]
    public double IrrigateBelow { get; init; }

    [Parameter("mm", 0, 100, "Water of one irrigation.", Mark = Mark.Given)]
    public double IrrigationAmount { get; init; } = 10;

    [KeyHelp("Irrigations by plan, beside those of irrigate_below: each with its time and its amount.")]
    public IReadOnlyList<Irrigation> Irrigation { get; init; } = [];
}
