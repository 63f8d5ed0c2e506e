namespace CanopySim.Light;

/// <summary>Pixels of one row that a triangle covers.</summary>
/// <param name="Pixel">The first.</param>
/// <param name="Count">How many, in one row.</param>
/// <param name="Height">Height above the slope at the first [m].</param>
/// <param name="Slope">Change of height from pixel to pixel [m].</param>
/// <param name="Lowest">Lowest height of the triangle [m], against the overshoot of slivers.</param>
/// <param name="Highest">Its highest [m].</param>
/// <param name="Place">The triangle's place in the mesh.</param>
/// <param name="UpperSeesLight">1 where its upper or outer side faces the light, else 0.</param>
internal readonly record struct PixelRun(
    int Pixel, int Count, float Height, float Slope, float Lowest, float Highest, int Place, int UpperSeesLight);

/// <summary>Takes runs as triangles are drawn.</summary>
internal interface IPixelRuns
{
    void Add(ReadOnlySpan<PixelRun> runs);
}
