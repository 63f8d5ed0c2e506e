using CanopySim.Carbon;
using CanopySim.Fruit;
using CanopySim.Growth;
using CanopySim.Phenology;
using CanopySim.Photosynthesis;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>Which figures the model's parameters were fitted to: every finding takes its standing from this list.</summary>
internal static class FittedQuantities
{
    public const string ShootLength = "shoot length";
    public const string Nodes = "nodes a shoot";
    public const string NodesAtBloom = "nodes at bloom";
    public const string PrimaryArea = "primary leaf area a shoot";
    public const string LateralArea = "lateral leaf area a shoot";
    public const string Yield = "yield";
    public const string Prunings = "prunings a vine";
    public const string CarbonGain = "net carbon gain a leaf area";
    public const string SugarRise = "rise of sugar after veraison";

    public const string FewLeaves = "sugar with few leaves";
    public const string VeraisonOfFewLeaves = "veraison with few leaves";

    public const string Internode = "internode";
    public const string LeafArea = "leaf area a vine";
    public const string AreaPerLength = "primary leaf area over shoot length";

    /// <summary>Fitted figures with the parameters that were turned to meet them, as section.property.</summary>
    public static IReadOnlyDictionary<string, string[]> Fitted { get; } = new Dictionary<string, string[]>
    {
        [ShootLength] =
        [
            Name<CarbonParameters>(nameof(CarbonParameters.InitialReserves)),
        ],
        [Nodes] = [Name<GrowthParameters>(nameof(GrowthParameters.DeclineAfterBloom))],
        [NodesAtBloom] = [Name<GrowthParameters>(nameof(GrowthParameters.Phyllochron))],
        [PrimaryArea] = [Name<GrowthParameters>(nameof(GrowthParameters.PotentialBladeArea))],
        [LateralArea] = [Name<GrowthParameters>(nameof(GrowthParameters.LateralRate))],
        [Yield] = [Name<FruitParameters>(nameof(FruitParameters.BerriesPerCluster))],
        [Prunings] = [Name<CarbonParameters>(nameof(CarbonParameters.RipeStemMass))],
        [CarbonGain] = [Name<LeafParameters>(nameof(LeafParameters.Vcmax25))],
        [VeraisonOfFewLeaves] = [Name<Cultivar>(nameof(Cultivar.VeraisonRateWithoutSupply))],
        [FewLeaves] = [Name<GrowthParameters>(nameof(GrowthParameters.AgeingSavedByLeafLoss))],
        [SugarRise] = [Name<FruitParameters>(nameof(FruitParameters.SugarLoading))],
    };

    // What follows once the figures above are met: length over nodes, shoots times areas, area over length.
    private static readonly string[] Arithmetic = [Internode, LeafArea, AreaPerLength];

    /// <summary>The standing of a quantity.</summary>
    public static Standing StandingOf(string quantity) => Fitted.ContainsKey(quantity) ? Standing.Fitted
        : Arithmetic.Contains(quantity) ? Standing.Arithmetic
        : Standing.Predicted;

    public static string Name<TParameters>(string property) => $"{typeof(TParameters).Name}.{property}";
}
