namespace CanopySim.Training;

/// <summary>A row of the cell with its walls of foliage.</summary>
/// <param name="Number">Number of the row, from 0.</param>
/// <param name="Across">Where its middle runs across the cell [m, horizontal].</param>
/// <param name="Walls">Its walls, in the order of their numbers.</param>
public sealed record RowOfWalls(int Number, double Across, IReadOnlyList<FoliageWall> Walls);
