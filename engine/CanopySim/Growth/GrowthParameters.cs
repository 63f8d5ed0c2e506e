using CanopySim.Parameters;

namespace CanopySim.Growth;

/// <summary>How shoots grow: temperature response, node rate, final sizes, laterals, frost.</summary>
public sealed record GrowthParameters
{
    [Parameter("degC", 0, 12, "Temperature below which nothing grows.", Mark = Mark.Derived,
        Source = "Buttrose & Hale 1973 (implies 6.1); Moncur et al. 1989 (5 to 8)")]
    public double BaseTemperature { get; init; } = 6.5;

    [Parameter("degC", 20, 34, "Temperature at which growth stops rising.", Mark = Mark.Recalled, Source = "Buttrose 1969: saturates near 28 to 30")]
    public double OptimumTemperature { get; init; } = 28;

    [Parameter("degC", 28, 40, "Temperature above which growth falls.", Mark = Mark.Published, Source = "Greer & Weedon 2016: falls above 30 to 35")]
    public double DeclineTemperature { get; init; } = 34;

    [Parameter("degC", 38, 50, "Temperature at which growth has ceased.", Mark = Mark.Assumed)]
    public double CeilingTemperature { get; init; } = 44;

    [Parameter("1", 0, 14, "Nodes preformed in the winter bud.", Mark = Mark.Recalled, Source = "6 to 10: Pratt 1974")]
    public int PreformedNodes { get; init; } = 8;

    [Parameter("degC d", 8, 60, "Thermal units between preformed leaves.", Mark = Mark.Derived,
        Source = "three quarters of the later ones': 12 to 16 against 18 to 22 degC d above 10 degC, from memory")]
    public double PreformedPhyllochron { get; init; } = 20.5;

    [Parameter("degC d", 12, 80, "Thermal units between later leaves.", Mark = Mark.Fitted,
        Source = "16 to 19 nodes at bloom: Pratt & Coombe 1978, Vitis 17:125-133; 24.0 at veraison: Kliewer & Dokoozlian 2005, table 3, over five weather seeds")]
    public double Phyllochron { get; init; } = 27.5;

    [Parameter("degC d", 50, 5000, "Thermal units after bloom in which the rate of nodes falls to 1/e; large for vigorous vines.", Mark = Mark.Fitted,
        Source = "24.0 nodes at veraison: Kliewer & Dokoozlian 2005, table 3, over five weather seeds")]
    public double DeclineAfterBloom { get; init; } = 168;

    [Parameter("cm2", 30, 500, "Largest blade that a primary node can form.", Mark = Mark.Fitted,
        Source = "primary leaf area 2,280 cm2 a shoot: Kliewer & Dokoozlian 2005, table 3, over five weather seeds")]
    public double PotentialBladeArea { get; init; } = 157;

    [Parameter("degC d", 80, 800, "Thermal units over which a blade expands.", Mark = Mark.Recalled, Source = "Schultz 1992; Lebon 2004")]
    public double BladeExpansion { get; init; } = 330;

    [Parameter("cm", 2, 20, "Longest internode that a primary node can form.", Mark = Mark.Assumed,
        Source = "from an earlier study of ours, fitted there to internodes of 5.3 cm: Kliewer & Dokoozlian 2005, table 3, vertical trellis")]
    public double PotentialInternode { get; init; } = 9.95;

    [Parameter("degC d", 30, 400, "Thermal units over which an internode elongates.", Mark = Mark.Recalled, Source = "general: 7 to 12 d")]
    public double InternodeElongation { get; init; } = 110;

    [Parameter("degC d", 50, 1000, "Thermal units from a node's leaf to its lateral.", Mark = Mark.Assumed)]
    public double LateralDelay { get; init; } = 250;

    [Parameter("1", 0, 2, "Rate of lateral leaves against that of the main axis.", Mark = Mark.Fitted,
        Source = "lateral leaf area 1,050 cm2 a shoot: Kliewer & Dokoozlian 2005, table 3, over five weather seeds")]
    public double LateralRate { get; init; } = 0.51;

    [Parameter("cm2", 10, 200, "Largest blade of a lateral.", Mark = Mark.Recalled, Source = "30 to 50 % of a main leaf: Bodor et al. 2018")]
    public double LateralBladeArea { get; init; } = 40;

    [Parameter("1", 0, 30, "Most leaves on a lateral.", Mark = Mark.Assumed)]
    public int LateralLeaves { get; init; } = 8;

    [Parameter("1", 1, 10, "Rate of laterals on the nodes under a cut, against others.", Mark = Mark.Assumed)]
    public double LateralReleaseByTopping { get; init; } = 4;

    [Parameter("degC d", 50, 5000, "Thermal units after bloom in which the pace of laterals that a cut sets free falls to 1/e.", Mark = Mark.Assumed,
        Source = "chosen while looking at cuts in June and July: 1 to 3 laterals push within 7 to 14 d, 3 to 8 leaves each, general, from memory")]
    public double ReleasedDecline { get; init; } = 900;

    [Parameter("1", 0, 0.5, "Spread of vigour between shoots (coefficient of variation).", Mark = Mark.Assumed)]
    public double VigorSpread { get; init; } = 0.12;

    [Parameter("d", 60, 300, "Life of a leaf in the light; shorter in deep shade.", Mark = Mark.Recalled, Source = "120 to 170 d, general")]
    public double LeafLife { get; init; } = 150;

    [Parameter("1", 0, 0.9, "Share of its ageing that a leaf is spared on a vine that lost all other leaves; a part of it on one that lost a part.",
        Mark = Mark.Fitted,
        Source = "vines of 6 leaves a shoot ripen (Parker et al. 2014, 2015); that they age slowly: Candolfi-Vasconcelos & Koblet 1991, Vitis 30:129-141, from memory")]
    public double AgeingSavedByLeafLoss { get; init; } = 0.65;

    [Parameter("degC", -8, 0, "Spring frost that kills green tissue.", Mark = Mark.Assumed)]
    public double SpringFrostKill { get; init; } = -2;

    [Parameter("degC", -10, 0, "Autumn frost that ends the season.", Mark = Mark.Assumed)]
    public double AutumnFrostKill { get; init; } = -2.5;

    [Parameter("d", 3, 40, "Days from a killing spring frost to the break of secondary buds.", Mark = Mark.Assumed)]
    public double SecondaryBudDelay { get; init; } = 12;

    [Parameter("1", 0, 1, "Clusters on shoots from secondary buds, against primary.", Mark = Mark.Assumed)]
    public double SecondaryBudFruitfulness { get; init; } = 0.35;
}
