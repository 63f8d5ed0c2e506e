namespace CanopySim.Drawing.Painting;

/// <summary>How much care goes into a picture.</summary>
public enum Fineness
{
    /// <summary>While a hand moves it: half the points each way, one sample each, plainer leaves, shadows as they were.</summary>
    Moving,

    /// <summary>At rest: four samples a point, blades as drawn, soft shadows of this canopy under this sun.</summary>
    Still,
}
