using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// Leads shoots between the wires: every node that there is is held from now on, what grows later bends freely.
/// </summary>
internal sealed class TuckingWork(Tucking step) : IWork
{
    public WorkStep Step => step;

    public string Words => "shoots tucked between the wires";

    public void Do(Canopy canopy, WorkTally tally)
    {
        foreach (var shoot in canopy.PrimaryShoots())
        {
            if (shoot.HeldNodes is null || shoot.HeldNodes >= shoot.Phytomers.Count) continue;
            shoot.HeldNodes = shoot.Phytomers.Count;
            tally.Count(shoot);
            (tally.CanopyChanged, tally.AnythingDone) = (true, true);
        }

        if (!tally.AnythingDone) tally.Warn("no shoot had grown since the last tucking, so none was tucked");
    }
}
