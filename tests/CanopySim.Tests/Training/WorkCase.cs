using CanopySim.Carbon;
using CanopySim.Plants;
using CanopySim.Tests.Plants;
using CanopySim.Training;

namespace CanopySim.Tests.Training;

/// <summary>A grown canopy and the worker for its plan; days count from one that every step may name.</summary>
internal sealed class WorkCase
{
    public static DateOnly Day { get; } = new(2025, 6, 1);

    public WorkCase(CanopyWork work, Scenario? block = null, int days = 36)
    {
        Scenario = (block ?? GrownCanopy.Scenario()) with { CanopyWork = work };
        Grown = new GrownCanopy(Scenario).Grow(days);
        Worker = new CanopyWorker(Scenario);
    }

    public Scenario Scenario { get; }

    public GrownCanopy Grown { get; }

    public Canopy Canopy => Grown.Canopy;

    public CanopyWorker Worker { get; }

    public IReadOnlyList<Shoot> Shoots => [.. Canopy.PrimaryShoots()];

    public (IReadOnlyList<LostMass> Lost, bool CanopyChanged) Do(DateOnly? date = null,
        StagesReached stages = default) =>
        Worker.Apply(Canopy, stages, date ?? Day);

    /// <summary>
    /// Does the day's work, and tells what the first vine's organs hold less for it and what was booked as lost [g C].
    /// </summary>
    public (double Missing, double Lost) DoAndWeigh()
    {
        var vine = Canopy.Vines[0];
        var before = CarbonStock.Of(vine, Scenario.Carbon);
        var lost = Do().Lost[0];
        return (before - CarbonStock.Of(vine, Scenario.Carbon), CarbonLedger.CarbonOf(lost));
    }
}
