using CanopySim.Parameters;

namespace CanopySim.Training;

/// <summary>
/// Posts and wires by their geometry. A length left out takes the form's own (<see cref="TrellisDefaults"/>); one that
/// the form does not use is an error of the scenario (<see cref="TrellisKeys"/>).
/// </summary>
public sealed record Trellis
{
    [KeyHelp(
        "upright-hedge (vertical shoot positioned), high-wire (single high wire, free), hanging-curtain (high cordon, "
        + "shoots led down), twin-curtain (horizontally divided, hanging), open-u (horizontally divided, upright), "
        + "slanted-v (two walls that lean outward from a central or paired cordon), up-and-down (vertically divided), "
        + "overhead (pergola) or bush (head trained, no wires).")]
    public TrellisForm Form { get; init; } = TrellisForm.UprightHedge;

    [Parameter("m", 0.3, 3, "Height of the cordon; of the upper one of up-and-down.",
        Source =
            "growing handbooks and growers' pages: 0.9 m hedge and open-u, 1.6 m high wire, 1.7 m curtains, 1.2 m "
            + "slanted-v, 1.15 m up-and-down, 2.0 m overhead")]
    public double? CordonHeight { get; init; }

    [Parameter("m", 0.3, 3,
        "Height of the lower cordon of up-and-down, whose shoots are led down; the same as cordon_height for one "
        + "cordon.",
        Source = "the trade: two fruit wires at 1.0 and 1.15 m")]
    public double? LowerCordonHeight { get; init; }

    [Parameter("m", 0.1, 1.2, "Height of a bush vine's head, from which its arms leave.",
        Source = "the trade: 0.3 to 0.7 m")]
    public double? HeadHeight { get; init; }

    [Parameter("m", 0.5, 3.5, "Height of the top wire; of the roof where the trellis is overhead.",
        Source =
            "growing handbooks: 1.8 to 2.1 m for a hedge; 1.0 m of foliage over the upper cordon of up-and-down, 1.0 "
            + "to 1.2 m along the arms of slanted-v")]
    public double? TopWireHeight { get; init; }

    [Parameter("m", 0.1, 3,
        "Width that the wires leave to the shoots of a wall: between paired catch wires, or across the roof.",
        Source =
            "the trade: 0.3 to 0.5 m for a hedge, 0.4 to 0.6 m for a curtain, 0.3 m for up-and-down; overhead assumed")]
    public double? FoliageWidth { get; init; }

    [Parameter("m", 0, 3,
        "Distance across the row between the two cordons of a horizontally divided form; 0 for one cordon of slanted-v "
        + "that bears both walls.",
        Source =
            "growers' pages: 1.2 m between twin curtains; 0.7 to 0.9 m at the base of open-u, from memory; slanted-v "
            + "assumed")]
    public double? CordonDistance { get; init; }

    [Parameter("deg", 0, 70, "Angle from upright by which either wall leans outward.",
        Source =
            "the trade: 10 to 20 deg for open-u, arms 45 to 60 deg over the horizontal for slanted-v, so 30 to 45 deg "
            + "from upright")]
    public double? WallTilt { get; init; }

    [KeyHelp(
        "Side of the row to which an overhead roof is led: both, right, left, or facing: rows in pairs lead their "
        + "roofs over the alley between them, which needs an even number of rows.rows_in_cell.")]
    public RoofArms RoofArms { get; init; } = RoofArms.Both;

    [KeyHelp(
        "Pairs of catch wires from the lowest up, each a list of its height and the distance between its wires: [1.2 "
        + "m, 0.3 m]; between pairs the width left to the shoots changes evenly. Left out, walls have foliage_width up "
        + "to the top wire.")]
    public IReadOnlyList<CatchWirePair> CatchWires { get; init; } = [];

    /// <summary>The cordon's height with the form's own where none is given; the head's for a bush [m].</summary>
    public double CordonHeightOrDefault => Form == TrellisForm.Bush
        ? HeadHeight ?? TrellisDefaults.HeadHeight
        : CordonHeight ?? TrellisDefaults.CordonHeight(Form);

    /// <summary>Height of the lower cordon of up-and-down, never over the upper one where it is left out [m].</summary>
    public double LowerCordonHeightOrDefault =>
        LowerCordonHeight ?? Math.Min(CordonHeightOrDefault, TrellisDefaults.LowerCordonHeight);

    /// <summary>
    /// The top wire's height: as given, else that of the highest catch wires, else the form's own [m].
    /// </summary>
    public double TopWireHeightOrDefault =>
        TopWireHeight ?? (CatchWires.Count > 0 ? CatchWires[^1].Height : TrellisDefaults.TopWireHeight(Form));

    /// <summary>The width for shoots with the form's own where none is given [m].</summary>
    public double FoliageWidthOrDefault => FoliageWidth ?? TrellisDefaults.FoliageWidth(Form, RoofArms);

    /// <summary>Distance between the two cordons with the form's own where none is given [m].</summary>
    public double CordonDistanceOrDefault => CordonDistance ?? TrellisDefaults.CordonDistance(Form);

    /// <summary>Lean of the walls with the form's own where none is given [deg].</summary>
    public double WallTiltOrDefault => WallTilt ?? TrellisDefaults.WallTilt(Form);
}
