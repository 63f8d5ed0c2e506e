using CanopySim.Geometry;
using CanopySim.Training;

namespace CanopySim.Assessment;

/// <summary>
/// Virtual point quadrat: rods pushed through the fruit zone of each wall of foliage at seeded places, square to the
/// wall, or from below where the canopy lies flat; leaves and clusters counted once each a rod, in the order met. Wood
/// does not count. A rod of one wall ends half way to the next or in the middle of the alley, so that each curtain and
/// each row is read by itself, with what reaches over from the next row. After the field method of Smart &amp; Robinson
/// 1991 (at least 50 insertions; here 200 in all, and at least 100 a wall), from memory.
/// </summary>
public static class PointQuadrat
{
    private const int Insertions = 200;
    private const int LeastOfWall = 100;

    /// <summary>Reads a canopy, its walls and rows together.</summary>
    public static QuadratReading Read(Scene scene, Scenario scenario) =>
        QuadratReading.Together(ReadRows(scene, TrellisLayout.RowsOf(scenario), scenario.Seed).SelectMany(row => row));

    /// <summary>Reads every wall of every row by itself, in the order of the lists.</summary>
    /// <param name="scene">The cell with its rows, evenly apart.</param>
    /// <param name="rows">The rows, all of them, each with its walls.</param>
    /// <param name="seed">Decides where the rods go.</param>
    public static IReadOnlyList<IReadOnlyList<QuadratReading>> ReadRows(Scene scene, IReadOnlyList<RowOfWalls> rows,
        ulong seed)
    {
        if (rows.Count == 0 || rows.Any(row => row.Walls.Count == 0))
            throw new ArgumentException("a canopy has at least one row, and a row at least one wall", nameof(rows));
        var rods = new RodsThrough(scene);
        var ofWall = Math.Max(LeastOfWall, Insertions / rows.Sum(row => row.Walls.Count));
        var spacing = scene.Cell.Across / rows.Count;
        return [.. rows.Select(row => row.Walls.Select((_, wall) => ReadWall(row, wall)).ToList())];

        QuadratReading ReadWall(RowOfWalls row, int wall)
        {
            var (insertions, places) = (new IReadOnlyList<SurfaceKind>[ofWall], new double[ofWall]);
            for (var insertion = 0; insertion < ofWall; insertion++)
            {
                var rod = QuadratRod.At(scene.Cell, row, wall, spacing, seed, insertion);
                (insertions[insertion], places[insertion]) = (rods.Contacts(rod), rod.Place);
            }

            return new QuadratReading { Insertions = insertions, Places = places };
        }
    }

    /// <summary>Reads every wall of a row that is alone in its cell, in its middle.</summary>
    public static IReadOnlyList<QuadratReading> ReadWalls(Scene scene, IReadOnlyList<FoliageWall> walls, ulong seed) =>
        ReadRows(scene, [new RowOfWalls(0, 0, walls)], seed)[0];
}
