using CanopySim.Carbon;
using CanopySim.Plants;

namespace CanopySim.Fruit;

/// <summary>What the fruit of a vine could take in a day: dry mass of structure [g] and sugar [g].</summary>
public readonly record struct FruitDemand(double Structure, double Sugar)
{
    /// <summary>Its price [g CH₂O].</summary>
    public double Price(CarbonParameters carbon) => (Structure * carbon.FruitCost) + (Sugar * carbon.SugarCost);
}

/// <summary>
/// Berries grow in two phases: structure (and the first sugar) from bloom to veraison, then sugar, with water behind it.
/// Loading rises over some days after veraison, answers temperature, and ends at a sugar of its own.
/// </summary>
public sealed class BerryGrowth(FruitParameters fruit)
{
    // Logistic start of loading: half way 6 d after veraison, scale 3 d. Without it Brix rises by 1 a day. Assumed.
    private const double RampMidpointDays = 6;
    private const double RampScaleDays = 3;

    // How sharply loading ends as its last sugar is neared. Assumed.
    private const double EndSharpness = 5;

    /// <summary>Share of the good supply index at which set is full; from there to 1.25 times set grows with it. Assumed.</summary>
    private const double SupplyForFullSet = 0.55;
    private const double MostSet = 1.25;

    /// <summary>Sets berries at bloom, by the mean supply index of the weeks before.</summary>
    public void SetBerries(Vine vine, double meanSupplyIndex)
    {
        var set = Math.Min(MostSet, meanSupplyIndex / SupplyForFullSet);
        foreach (var cluster in vine.Clusters()) cluster.Berries = fruit.BerriesPerCluster * set;
        vine.Crop.Berries = vine.Clusters().Sum(cluster => cluster.Berries ?? 0);
    }

    /// <summary>Demand before veraison: the structure whose share of the way from bloom to veraison is gone through today.</summary>
    public FruitDemand StructureDemand(Crop crop, double progressBefore, double progressAfter)
    {
        // Structure is complete a little before veraison: the lag. Share of the way assumed.
        const double StructureEnds = 0.85;
        var share = Growth.ExpansionCourse.Increment(progressBefore, progressAfter, StructureEnds);
        return new FruitDemand(crop.Berries * fruit.BerryStructure * share, crop.Berries * Berry.SugarAtVeraison(fruit) * share);
    }

    /// <summary>Demand for sugar on a day after veraison, at a temperature factor [0 to 1].</summary>
    public FruitDemand SugarDemand(Crop crop, int daysSinceVeraison, double temperatureFactor)
    {
        var ramp = 1 / (1 + Math.Exp(-(daysSinceVeraison - RampMidpointDays) / RampScaleDays));
        var fullness = Math.Min(1, Brix(crop) / fruit.LoadingEnds);
        var perBerry = fruit.SugarLoading * 1e-3 * temperatureFactor * ramp * (1 - Math.Pow(fullness, EndSharpness));
        return new FruitDemand(0, crop.Berries * perBerry * SizeShare(crop));
    }

    /// <summary>Takes a share of the demand into the berries.</summary>
    public static void Grow(Crop crop, FruitDemand demand, double share)
    {
        crop.PotentialStructure += demand.Structure;
        crop.StructureDryMass += share * demand.Structure;
        crop.Sugar += share * demand.Sugar;
    }

    /// <summary>Size of the berries against full ones [0 to 1].</summary>
    public static double SizeShare(Crop crop) => crop.PotentialStructure > 0 ? crop.StructureDryMass / crop.PotentialStructure : 0;

    /// <summary>How far the berries' structure has come [0 to 1].</summary>
    public static double StructureProgress(Crop crop, FruitParameters fruit) =>
        crop.Berries > 0 ? Math.Min(1, crop.PotentialStructure / (crop.Berries * fruit.BerryStructure)) : 0;

    /// <summary>Sugar of the berries [Brix].</summary>
    public double Brix(Crop crop) => crop.Berries > 0 ? Berry.Brix(crop.Sugar / crop.Berries, SizeShare(crop), fruit) : 0;

    /// <summary>Fresh mass of the crop with its stalks [g].</summary>
    public double FreshMass(Crop crop) =>
        crop.Berries <= 0 ? 0 : crop.Berries * Berry.FreshMass(crop.Sugar / crop.Berries, SizeShare(crop), fruit) / (1 - fruit.StalkShare);
}
