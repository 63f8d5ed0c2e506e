using System.Numerics;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// Where a shoot's axis runs, node by node, in the frame of its row (x across from the row's middle, y along it in the
/// cell, z up from the ground under the row where the shoot starts): led by the wires of its wall, and bent by its own
/// weight where nothing holds it. The path depends on the shoot's lengths, on how many of its nodes are held, and on
/// the seed alone, so it can be drawn anew any day.
/// </summary>
public sealed class ShootPath
{
    private readonly Scenario _scenario;
    private readonly WallGuide[][] _guides;

    public ShootPath(Scenario scenario)
    {
        _scenario = scenario;
        _guides = [.. Enumerable.Range(0, scenario.Rows.RowsInCell).Select(row =>
            TrellisLayout.WallsOf(scenario.Trellis, row).Select(wall => new WallGuide(scenario, wall)).ToArray())];
    }

    /// <summary>Positions of the base and of every node [m]: one more than there are phytomers.</summary>
    public Vector3[] Nodes(Shoot shoot)
    {
        var guide = _guides[_scenario.Rows.RowOf(shoot.Vine)][shoot.Wall];
        var lengths = shoot.Phytomers.Select(phytomer => (float)phytomer.InternodeLength).ToArray();
        var beyond = lengths.Sum();
        var points = new Vector3[lengths.Length + 1];
        points[0] = guide.Base(shoot);
        var course = guide.Start(shoot);
        for (var i = 0; i < lengths.Length; i++)
        {
            var isHeld = shoot.HeldNodes is not { } held || i < held;
            course = guide.Turn(course, points[i], lengths[i], beyond, isHeld);
            (points[i + 1], course) = guide.Step(course, points[i], lengths[i], points[0].Y, isHeld);
            beyond -= lengths[i];
        }

        return points;
    }
}
