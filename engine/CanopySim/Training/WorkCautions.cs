namespace CanopySim.Training;

/// <summary>What results must say where the season's work can hurt people or vines.</summary>
public static class WorkCautions
{
    private const string Sprays =
        "Sprays: follow the product label and local rules, keep re-entry and pre-harvest intervals, wear the "
        + "protection named on the label, "
        + "and leave licensed work to licensed people. The unsprayed leaf area only counts leaf that came after the "
        + "last spray that reached it: "
        + "how well or how long a spray protects, and what rain washes off, is not simulated.";

    private const string Work =
        "Work in the canopy, by hand or by machine: follow local rules for machines, blades and work in heat; "
        + "fruit that is laid open of a sudden can burn in the sun.";

    private const string Advice = "A model result is advice to check in the row, not an instruction.";

    /// <summary>The cautions that a scenario's work calls for; none where no work is planned.</summary>
    public static IReadOnlyList<string> Of(Scenario scenario)
    {
        var work = scenario.CanopyWork;
        var cuts = work.ShootThinning.Count + work.Tucking.Count + work.Topping.Count + work.SideHedging.Count
            + work.LeafRemoval.Count
            + work.LateralRemoval.Count + work.ClusterThinning.Count;
        var cautions = new List<string>();
        if (work.Sprays.Count > 0) cautions.Add(Sprays);
        if (cuts > 0) cautions.Add(Work);
        if (cautions.Count > 0) cautions.Add(Advice);
        return cautions;
    }
}
