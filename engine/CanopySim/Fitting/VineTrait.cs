using CanopySim.Parameters;

namespace CanopySim.Fitting;

/// <summary>
/// Something in which the vines of a block may differ from the scenario's, and that notes can tell of. A member holds it as standard
/// deviations from the scenario's value.
/// </summary>
/// <param name="Name">Its key in results.</param>
/// <param name="Words">What it is, in the reader's words.</param>
/// <param name="Spread">One standard deviation: of the logarithm of a factor, or of a shift in its unit.</param>
/// <param name="Unit">Unit of a shift; empty for a factor.</param>
/// <param name="Apply">The scenario with so much of it: a factor, or a shift.</param>
public sealed record VineTrait(string Name, string Words, double Spread, string Unit, Func<Scenario, double, Scenario> Apply)
{
    public bool IsFactor => Unit.Length == 0;

    /// <summary>The factor or shift at so many standard deviations.</summary>
    public double At(double deviations) => IsFactor ? Math.Exp(Spread * deviations) : Spread * deviations;
}

/// <summary>
/// The traits of a member. How far vines differ in them is assumed, each width chosen so that it covers what the sources in their
/// comments print; notes narrow them, and what no note tells of stays so wide.
/// </summary>
public static class VineTraits
{
    /// <summary>The traits, in the order of a member's numbers.</summary>
    public static IReadOnlyList<VineTrait> All { get; } =
    [
        // Heat sums to budbreak miss by 2.5 to 4.5 d (Nendel 2010): 4 d of some 8 °C d.
        new("budbreak", "day of budbreak", 4, "d", Budbreak),

        // 18 to 25 °C d above 10 °C a leaf (Schultz 1992; Lebon et al. 2004).
        Factor("phyllochron", "heat that a node takes", 0.09, (scenario, by) => scenario with
        {
            Growth = scenario.Growth with
            {
                Phyllochron = By(scenario.Growth.Phyllochron, by, scenario.Growth, nameof(scenario.Growth.Phyllochron)),
                PreformedPhyllochron =
                    By(scenario.Growth.PreformedPhyllochron, by, scenario.Growth, nameof(scenario.Growth.PreformedPhyllochron)),
            },
        }),
        // With two thirds of the usual reserves a vine of the model starves in spring: that is to be rare.
        Factor("vigor", "vigor: reserves in spring", 0.15, (scenario, by) => scenario with
        {
            Carbon = scenario.Carbon with
            {
                InitialReserves = By(scenario.Carbon.InitialReserves, by, scenario.Carbon, nameof(scenario.Carbon.InitialReserves)),
            },
        }),

        // 4.9 to 5.5 cm on one cultivar's trellises (Kliewer & Dokoozlian 2005), 6 to 8 cm ideal (Smart & Robinson 1991).
        Factor("internode", "length of internodes", 0.15, (scenario, by) => scenario with
        {
            Growth = scenario.Growth with
            {
                PotentialInternode =
                    By(scenario.Growth.PotentialInternode, by, scenario.Growth, nameof(scenario.Growth.PotentialInternode)),
            },
        }),

        // 100 to 200 cm² between cultivars (Oxford Companion to Wine 2006).
        Factor("leaf_size", "size of leaves", 0.15, (scenario, by) => scenario with
        {
            Growth = scenario.Growth with
            {
                PotentialBladeArea =
                    By(scenario.Growth.PotentialBladeArea, by, scenario.Growth, nameof(scenario.Growth.PotentialBladeArea)),
                LateralBladeArea =
                    By(scenario.Growth.LateralBladeArea, by, scenario.Growth, nameof(scenario.Growth.LateralBladeArea)),
            },
        }),
        Factor("laterals", "pace of laterals", 0.25, (scenario, by) => scenario with
        {
            Growth = scenario.Growth with
            {
                LateralRate = By(scenario.Growth.LateralRate, by, scenario.Growth, nameof(scenario.Growth.LateralRate)),
            },
        }),
        Factor("summer_growth", "how long shoots go on after bloom", 0.25, (scenario, by) => scenario with
        {
            Growth = scenario.Growth with
            {
                DeclineAfterBloom =
                    By(scenario.Growth.DeclineAfterBloom, by, scenario.Growth, nameof(scenario.Growth.DeclineAfterBloom)),
            },
        }),

        // Under a week on independent data (Parker et al. 2020): some 4 d of 15 and of 20 °C d.
        Factor("bloom", "heat from budbreak to bloom", 0.06, (scenario, by) => scenario with
        {
            Cultivar = scenario.Cultivar with
            {
                BloomSum = By(scenario.Cultivar.BloomSum, by, scenario.Cultivar, nameof(scenario.Cultivar.BloomSum)),
            },
        }),
        Factor("veraison", "heat from bloom to veraison", 0.06, (scenario, by) => scenario with
        {
            Cultivar = scenario.Cultivar with
            {
                VeraisonSum = By(scenario.Cultivar.VeraisonSum, by, scenario.Cultivar, nameof(scenario.Cultivar.VeraisonSum)),
            },
        }),
        Factor("clusters", "clusters on a shoot", 0.15, (scenario, by) => scenario with
        {
            Fruit = scenario.Fruit with
            {
                ClustersPerShoot = By(scenario.Fruit.ClustersPerShoot, by, scenario.Fruit, nameof(scenario.Fruit.ClustersPerShoot)),
            },
        }),
        Factor("set", "berries on a cluster", 0.2, (scenario, by) => scenario with
        {
            Fruit = scenario.Fruit with
            {
                BerriesPerCluster = By(scenario.Fruit.BerriesPerCluster, by, scenario.Fruit, nameof(scenario.Fruit.BerriesPerCluster)),
            },
        }),

        // 7 to 10 d on independent data (Parker et al. 2020), some of it weather.
        Factor("sugar", "pace of sugar", 0.15, (scenario, by) => scenario with
        {
            Fruit = scenario.Fruit with
            {
                SugarLoading = By(scenario.Fruit.SugarLoading, by, scenario.Fruit, nameof(scenario.Fruit.SugarLoading)),
            },
        }),
        Factor("photosynthesis", "photosynthesis of leaves", 0.1, (scenario, by) => scenario with
        {
            Leaf = scenario.Leaf with { Vcmax25 = By(scenario.Leaf.Vcmax25, by, scenario.Leaf, nameof(scenario.Leaf.Vcmax25)) },
        }),
        Factor("soil_water", "water that the soil holds", 0.25, (scenario, by) => scenario with
        {
            Soil = scenario.Soil with
            {
                TranspirableWater =
                    By(scenario.Soil.TranspirableWater, by, scenario.Soil, nameof(scenario.Soil.TranspirableWater)),
            },
        }),
    ];

    /// <summary>The scenario of a member.</summary>
    /// <param name="scenario">The block.</param>
    /// <param name="deviations">The member's traits, in standard deviations.</param>
    public static Scenario Apply(Scenario scenario, IReadOnlyList<double> deviations)
    {
        for (var i = 0; i < All.Count; i++) scenario = All[i].Apply(scenario, All[i].At(deviations[i]));
        return scenario;
    }

    private static VineTrait Factor(string name, string words, double spread, Func<Scenario, double, Scenario> apply) =>
        new(name, words, spread, "", apply);

    // Where budbreak is not given it follows a heat sum, of which some 8 °C d pass in a day then.
    private static Scenario Budbreak(Scenario scenario, double days)
    {
        const double HeatOfDay = 8;
        if (scenario.Season.Budbreak is { } given)
            return scenario with { Season = scenario.Season with { Budbreak = given.AddDays((int)Math.Round(days)) } };
        var (cultivar, sum) = (scenario.Cultivar, scenario.Cultivar.BudbreakSum + (HeatOfDay * days));
        return scenario with { Cultivar = cultivar with { BudbreakSum = Within(sum, cultivar, nameof(cultivar.BudbreakSum)) } };
    }

    private static double By(double value, double factor, object section, string name) => Within(value * factor, section, name);

    // What no scenario may hold no member holds either.
    private static double Within(double value, object section, string name)
    {
        var range = (ParameterAttribute)Attribute.GetCustomAttribute(section.GetType().GetProperty(name)!, typeof(ParameterAttribute))!;
        return Math.Clamp(value, range.Min, range.Max);
    }
}
