using CanopySim.Plants;

namespace CanopySim.Assessment;

/// <summary>Mass of the shoots' axes as a grower weighs them at pruning.</summary>
public static class Prunings
{
    // Dry mass of fresh canes in winter: about half; used with 1.58 kg canes for 0.79 kg dry in the carbon check of
    // 2.6. Common practice, no source.
    private const double DryShare = 0.5;

    /// <summary>Fresh prunings, mean over vines [kg].</summary>
    public static double KilogramsPerVine(Canopy canopy) =>
        canopy.Vines.Average(vine => vine.AllShoots().Sum(shoot => shoot.StemDryMass)) / DryShare / 1000;
}
