namespace CanopySim.Training;

/// <summary>The forms of trellis; the trade's names are in their help.</summary>
public enum TrellisForm
{
    /// <summary>Vertical shoot positioned.</summary>
    UprightHedge,

    /// <summary>High cordon, shoots led down.</summary>
    HangingCurtain,

    /// <summary>Pergola: shoots spread flat overhead.</summary>
    Overhead,

    /// <summary>Single high wire, shoots sprawl freely.</summary>
    HighWire,

    /// <summary>Horizontally divided, two curtains that hang.</summary>
    TwinCurtain,

    /// <summary>Horizontally divided, two upright walls that open a little.</summary>
    OpenU,

    /// <summary>Two walls that lean far outward from a central or paired cordon.</summary>
    SlantedV,

    /// <summary>Vertically divided: one wall led up, one down.</summary>
    UpAndDown,

    /// <summary>Head trained, without wires.</summary>
    Bush,
}

/// <summary>To which side of its row the roof of an overhead trellis is led.</summary>
public enum RoofArms
{
    /// <summary>Shoots go to both sides in turn.</summary>
    Both,

    /// <summary>All to the right, 90° clockwise from the row azimuth.</summary>
    Right,

    /// <summary>All to the left.</summary>
    Left,

    /// <summary>Rows in pairs: both lead their roofs over the alley between them.</summary>
    Facing,
}
