namespace CanopySim.Drawing.Painting;

/// <summary>How much care goes into a picture.</summary>
public enum Fineness
{
    /// <summary>
    /// While a hand moves it: half the points each way, one sample each, plainer leaves, shadows as they were.
    /// </summary>
    Moving,

    /// <summary>At rest: edges smoothed, blades as drawn, soft shadows of this canopy under this sun.</summary>
    Still,

    /// <summary>For keeping: the same with four samples a point.</summary>
    Kept,
}
