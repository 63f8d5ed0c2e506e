using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Tests.Plants;
using CanopySim.Training;

namespace CanopySim.Tests.Assessment;

/// <summary>A grown row by itself, and the same plants twice in a cell of twice the width.</summary>
internal sealed class CopiedRow
{
    public CopiedRow(TrellisForm form, double slope = 0, double aspect = 90)
    {
        Single = GrownCanopy.Scenario(form, slope, aspect);
        Double = Single with { Rows = Single.Rows with { RowsInCell = 2 } };
        Grown = new GrownCanopy(Single).Grow(60).Set();
        One = new CanopyScene(Single).Place(Grown.Canopy, SceneDetail.ForLight);
        Two = Twice(One, CanopyScene.CellOf(Double));
    }

    public Scenario Single { get; }

    public Scenario Double { get; }

    public GrownCanopy Grown { get; }

    public PlacedCanopy One { get; }

    public PlacedCanopy Two { get; }

    private static PlacedCanopy Twice(PlacedCanopy placed, Cell cell)
    {
        var scene = placed.Scene;
        var across = 0.5f * (float)cell.Across;
        var aside = new Vector3(across, 0, across * (float)cell.RiseAcross);
        return new PlacedCanopy(
            new Scene
            {
                Cell = cell,
                Corners = [.. scene.Corners, .. scene.Corners.Select(corner => corner + aside)],
                SurfaceOfTriangle =
                    [.. scene.SurfaceOfTriangle,
                    .. scene.SurfaceOfTriangle.Select(surface => surface + scene.SurfaceCount)],
                Kinds = [.. scene.Kinds, .. scene.Kinds],
                LeafIds = [.. scene.LeafIds, .. scene.LeafIds],
                Rows = [.. scene.Kinds.Select(_ => 0), .. scene.Kinds.Select(_ => 1)],
            },
            [.. placed.Leaves, .. placed.Leaves],
            [.. placed.Centers, .. placed.Centers.Select(center => center + aside)],
            [.. placed.Areas, .. placed.Areas]);
    }
}
