namespace CanopySim.Light;

/// <summary>
/// Pixels of one row that a triangle covers. Plain fields: millions a second are written in place, and a copy on the way would
/// wait for its own stores.
/// </summary>
internal struct PixelRun
{
    /// <summary>The first.</summary>
    public int Pixel;

    /// <summary>How many, in one row.</summary>
    public int Count;

    /// <summary>Height above the slope at the first [m].</summary>
    public float Height;

    /// <summary>Change of height from pixel to pixel [m].</summary>
    public float Slope;

    /// <summary>Lowest height of the triangle [m], against the overshoot of slivers.</summary>
    public float Lowest;

    /// <summary>Its highest [m].</summary>
    public float Highest;

    /// <summary>The triangle's place in the mesh.</summary>
    public int Place;

    /// <summary>1 where its upper or outer side faces the light, else 0.</summary>
    public int UpperSeesLight;
}

/// <summary>Takes runs as triangles are drawn.</summary>
internal interface IPixelRuns
{
    void Add(ReadOnlySpan<PixelRun> runs);
}
