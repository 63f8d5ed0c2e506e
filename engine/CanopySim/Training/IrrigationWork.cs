using CanopySim.Plants;
using CanopySim.Water;

namespace CanopySim.Training;

/// <summary>Gives the soil water.</summary>
internal sealed class IrrigationWork(SoilWater soil, Irrigation step) : IWork
{
    public WorkStep Step => step;

    public string Words => FormattableString.Invariant($"irrigated with {step.Amount:0.#} mm");

    public bool NeedsShoots => false;

    public void Do(Canopy canopy, WorkTally tally)
    {
        var drained = soil.Irrigate(step.Amount);
        tally.AnythingDone = true;
        if (drained > 1e-9)
            tally.Warn(FormattableString.Invariant(
                $"the soil was full: {drained:0.#} of {step.Amount:0.#} mm drained"));
    }

    public bool Overlaps(IWork other) => false;
}
