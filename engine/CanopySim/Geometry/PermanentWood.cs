using System.Numerics;
using CanopySim.Plants;
using CanopySim.Training;

namespace CanopySim.Geometry;

/// <summary>
/// Trunk, arms and cordons of a vine as tubes. A trunk goes straight up to a cordon over it; to cordons beside it it
/// sends an arm each; a bush has arms round its head. Cordons follow the ground, along the row and across it.
/// </summary>
internal sealed class PermanentWood(Scenario scenario)
{
    // Radii [m]. Common practice, no source.
    private const float CordonRadius = 0.02f;
    private const float TrunkRadius = 0.03f;

    // Arms to cordons beside the trunk leave it so far under them, and no lower than half way up [m]. Assumed.
    private const float ForkBelow = 0.3f;

    private readonly IReadOnlyList<(double Across, double Height)> _cordons = TrellisLayout.CordonsOf(scenario.Trellis);

    /// <summary>Adds a vine's wood to the surface that is open.</summary>
    public void Add(TriangleList triangles, Vine vine, Cell cell)
    {
        var row = (float)scenario.Rows.AcrossOf(scenario.Rows.RowOf(vine.Id));
        var y = (float)vine.PositionAlongRow;
        var half = 0.5f * (float)scenario.Rows.VineSpacing;
        var (riseAcross, rise) = ((float)cell.RiseAcross, (float)cell.RiseAlong);
        if (scenario.Trellis.Form == TrellisForm.Bush) AddHead();
        else if (_cordons.All(cordon => cordon.Across == 0)) AddTrunk(
            (float)_cordons.Max(cordon => cordon.Height) - CordonRadius);
        else AddFork();
        if (scenario.Trellis.Form == TrellisForm.Bush) return;
        foreach (var (across, height) in _cordons)
        {
            var axis = (float)height - CordonRadius;
            triangles.AddTube(Over((float)across, y - half, axis), Over((float)across, y + half, axis), CordonRadius,
                CordonRadius, 6);
        }

        void AddTrunk(float height) =>
            triangles.AddTube(Over(0, y, 0), Over(0, y, height), TrunkRadius, TrunkRadius, 6);

        void AddFork()
        {
            var lowest = (float)_cordons.Min(cordon => cordon.Height) - CordonRadius;
            var fork = Math.Max(0.5f * lowest, lowest - ForkBelow);
            AddTrunk(fork);
            foreach (var (across, height) in _cordons)
                triangles.AddTube(Over(0, y, fork), Over((float)across, y, (float)height - CordonRadius), CordonRadius,
                    CordonRadius, 6);
        }

        void AddHead()
        {
            var head = (float)scenario.Trellis.CordonHeightOrDefault;
            var fork = Math.Max(0.5f * head, head - BushHead.Below);
            AddTrunk(fork);
            for (var arm = 0; arm < BushHead.ArmCount; arm++)
            {
                var end = BushHead.ArmEnd(arm);
                // A shoot stands on the ground under its vine whole, and so do the arms.
                triangles.AddTube(Over(0, y, fork), Over(0, y, head) + end, CordonRadius, CordonRadius, 6);
            }
        }

        Vector3 Over(float across, float along, float above) =>
            new(row + across, along, above + (rise * along) + (riseAcross * (row + across)));
    }
}
