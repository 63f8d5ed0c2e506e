using CanopySim.Parameters;

namespace CanopySim.Training;

/// <summary>The forms of trellis that are built so far; the trade's names are in their help.</summary>
public enum TrellisForm
{
    /// <summary>Vertical shoot positioned.</summary>
    UprightHedge,

    /// <summary>High cordon, shoots led down.</summary>
    HangingCurtain,

    /// <summary>Pergola: shoots spread flat overhead.</summary>
    Overhead,
}

/// <summary>Posts and wires by their geometry. A length left out takes the form's own.</summary>
public sealed record Trellis
{
    [KeyHelp("upright-hedge (vertical shoot positioned), hanging-curtain (high cordon, shoots led down) or overhead (pergola).")]
    public TrellisForm Form { get; init; } = TrellisForm.UprightHedge;

    [Parameter("m", 0.3, 3, "Height of the cordon.", Source = "growing handbooks: 0.9 m hedge, 1.7 m curtain, 2.0 m overhead")]
    public double? CordonHeight { get; init; }

    [Parameter("m", 0.5, 3.5, "Height of the top wire.", Source = "growing handbooks: 1.8 to 2.1 m for a hedge")]
    public double? TopWireHeight { get; init; }

    [Parameter("m", 0.1, 3, "Width that the wires leave to the shoots: between paired catch wires, or across the roof.",
        Source = "the trade: 0.3 to 0.5 m for a hedge, 0.4 to 0.6 m for a curtain; overhead assumed")]
    public double? FoliageWidth { get; init; }

    /// <summary>The cordon's height with the form's own where none is given [m].</summary>
    public double CordonHeightOrDefault => CordonHeight ?? Form switch
    {
        TrellisForm.UprightHedge => 0.9,
        TrellisForm.HangingCurtain => 1.7,
        _ => 2.0,
    };

    /// <summary>The top wire's height with the form's own where none is given [m].</summary>
    public double TopWireHeightOrDefault => TopWireHeight ?? Form switch
    {
        TrellisForm.UprightHedge => 2.0,
        TrellisForm.HangingCurtain => 1.8,
        _ => 2.0,
    };

    /// <summary>The width for shoots with the form's own where none is given [m].</summary>
    public double FoliageWidthOrDefault => FoliageWidth ?? Form switch
    {
        TrellisForm.UprightHedge => 0.35,
        TrellisForm.HangingCurtain => 0.5,
        _ => 2.0,
    };
}
