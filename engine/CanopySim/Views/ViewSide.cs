namespace CanopySim.Views;

/// <summary>
/// From where a canopy is looked at; always square to what is seen, so that lengths can be measured in the picture.
/// </summary>
public enum ViewSide
{
    /// <summary>From the right of the row: the row runs from left to right.</summary>
    Front,

    /// <summary>Along the row, towards its azimuth: right is right.</summary>
    Along,

    /// <summary>From above: the row runs from left to right.</summary>
    Above,
}
