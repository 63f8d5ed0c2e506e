using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Plants;

namespace CanopySim.Bench;

/// <summary>The canopy of first-season on the evening of a day, grown by a draft season.</summary>
internal sealed class GrownBlock(DateOnly date)
{
    public static Scenario Scenario => FirstSeason.Scenario;

    public DateOnly Date => date;

    public Canopy Canopy { get; } = Simulation.CanopyOn(
        Scenario, FirstSeason.Weather, FirstSeason.Offset, new SeasonOptions { Quality = Quality.Draft, Threads = 2 }, date);

    /// <summary>Leaves that were ever made, fallen ones too: their numbers are below this.</summary>
    public int LeafNumbers => Canopy.LeavesSoFar;

    /// <summary>Every organ as it is drawn.</summary>
    public Scene Drawn() => new CanopyScene(Scenario).Place(Canopy, SceneDetail.Drawn).Scene;

    /// <summary>The triangles that a level sees in a season.</summary>
    public Scene For(Quality quality) => new CanopyLight(Scenario, quality, FirstSeason.Offset, 2).Place(Canopy, changed: true).Scene;

    public static int LeavesIn(Scene scene) => scene.LeafIds.Count(leaf => leaf >= 0);

    /// <summary>A cell that holds the scene's cell so many times along the row: the same vineyard, with more to reckon.</summary>
    public Scene Repeat(Scene scene, int times)
    {
        var copies = Enumerable.Range(0, times).ToArray();
        var along = new Vector3(0, (float)scene.Cell.Along, (float)(scene.Cell.Along * scene.Cell.RiseAlong));
        return new Scene
        {
            Cell = scene.Cell with { Along = times * scene.Cell.Along },
            Corners = [.. copies.SelectMany(copy => scene.Corners.Select(corner => corner + (copy * along)))],
            SurfaceOfTriangle = [.. copies.SelectMany(copy => scene.SurfaceOfTriangle.Select(surface => surface + (copy * scene.SurfaceCount)))],
            Kinds = [.. copies.SelectMany(_ => scene.Kinds)],
            LeafIds = [.. copies.SelectMany(copy => scene.LeafIds.Select(leaf => leaf < 0 ? leaf : leaf + (copy * LeafNumbers)))],
        };
    }
}
