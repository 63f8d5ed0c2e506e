using System.Globalization;
using CanopySim.Fruit;
using CanopySim.Growth;
using CanopySim.Parameters;

namespace CanopySim.Phenology;

/// <summary>
/// What tells cultivars apart: when they flower and turn, how large their leaves, berries and clusters are. This model is fitted to
/// Cabernet-Sauvignon, so a row's values are laid over its: sums by the difference of published sums, sizes by their ratio. Every one is
/// a start for a grower's own figures, not a measurement of a clone on a rootstock.
/// </summary>
public static class CultivarTable
{
    /// <summary>
    /// Heat above 5 °C to budbreak for each °C d of the published flowering sum. Nodes at bloom hardly differ between cultivars
    /// (16 to 19: Pratt &amp; Coombe 1978), so one that flowers earlier breaks its buds earlier. Derived: with this ratio the order and
    /// the days between flowering dates by published sums come out in six seasons of warm-valley within two days.
    /// </summary>
    public const double BudbreakHeatPerFloweringSum = 0.8;

    /// <summary>
    /// This model's thermal units from bloom to veraison for each °C d of the published sums: 22 °C of a July mean are 14 to 15 units.
    /// </summary>
    public const double UnitsPerVeraisonSum = 0.65;

    private const string Parker = "Parker et al. 2013, Agric Forest Meteorol 180:249-264";
    private const string Order = "order of ripening after Chasselas in the French catalogue, from memory, fitted to nine recalled sums (residual 41 °C d)";
    private const string Flowering = "guessed from that order, whole tens";
    private const string General = "range of handbooks, from memory";
    private const string Clones = "AVF clone trials 1999";
    private const string Ampelography = "class of leaf or shoot in ampelographies, from memory; its size assumed";

    private static readonly GrowthParameters Growth = new();
    private static readonly FruitParameters Fruit = new();
    private static readonly MarkedValue Like = new(1, Mark.Assumed, "as Cabernet-Sauvignon");
    private static readonly MarkedValue Clusters = new(1.8, Mark.Assumed, "most vinifera bear two on most shoots: growing handbooks");

    /// <summary>All rows, in the order of <see cref="KnownCultivar"/>.</summary>
    public static IReadOnlyList<CultivarRow> Rows { get; } =
    [
        Row(KnownCultivar.CabernetFranc, "Cabernet franc", Guessed(1270), Ranked(2650), 1.2, 1.5, 100, 150),
        Row(KnownCultivar.CabernetSauvignon, "Cabernet-Sauvignon", Recalled(1299), Recalled(2689), 1.0, 1.3, 90, 150) with
        {
            BerryMass = new(Fruit.BerryFreshMass, Mark.Recalled, "1.0 to 1.3 g, general"),
            BerriesPerCluster = new(Fruit.BerriesPerCluster, Mark.Fitted, "yield 9.9 t/ha: Kliewer & Dokoozlian 2005, table 3"),
        },
        Row(KnownCultivar.Chardonnay, "Chardonnay", Recalled(1217), Recalled(2547), 0.94, 1.59, 0, 0) with
        {
            BerryMass = new(1.27, Mark.Published, $"0.94 to 1.59 g: {Clones}"),
            BerriesPerCluster = new(92, Mark.Published, $"76 to 107: {Clones}"),
        },
        Row(KnownCultivar.Chasselas, "Chasselas", Guessed(1240), Ranked(2366), 2.0, 2.8, 150, 250),
        Row(KnownCultivar.Chenin, "Chenin", Guessed(1265), Ranked(2650), 1.4, 1.8, 160, 240),
        Row(KnownCultivar.Gewurztraminer, "Gewürztraminer", Guessed(1235), Ranked(2528), 1.2, 1.5, 90, 130) with
        {
            BladeSize = new(0.75, Mark.Assumed, "leaves small: Oxford Companion to Wine 2006; how small is assumed"),
            InternodeLength = new(0.9, Mark.Assumed, Ampelography),
        },
        Row(KnownCultivar.Grenache, "Grenache", Recalled(1277), Recalled(2750), 1.6, 2.0, 200, 300) with
        {
            Laterals = new(0.8, Mark.Assumed, "fewer lateral leaves than Syrah: Louarn et al. 2007; how many fewer is assumed"),
        },
        Row(KnownCultivar.Malbec, "Malbec", Guessed(1265), Ranked(2636), 1.5, 1.9, 130, 200),
        Row(KnownCultivar.Merlot, "Merlot", Recalled(1269), Recalled(2636), 1.2, 1.6, 120, 180) with
        {
            BladeSize = new(1.2, Mark.Assumed, "leaves large: Oxford Companion to Wine 2006; how large is assumed"),
        },
        Row(KnownCultivar.PinotGris, "Pinot gris", Guessed(1220), Ranked(2510), 1.2, 1.5, 80, 120) with
        {
            BladeSize = new(0.9, Mark.Assumed, Ampelography),
            InternodeLength = new(0.9, Mark.Assumed, Ampelography),
        },
        Row(KnownCultivar.PinotNoir, "Pinot noir", Recalled(1219), Recalled(2511), 1.26, 1.57, 0, 0) with
        {
            BerryMass = new(1.42, Mark.Published, $"1.26 to 1.57 g: {Clones}"),
            BerriesPerCluster = new(109, Mark.Published, $"74 to 144: {Clones}"),
            ClustersPerShoot = new(1.85, Mark.Published, "1.5 to 2.2 by clone: AVF 2001"),
            BladeSize = new(0.9, Mark.Assumed, Ampelography),
            InternodeLength = new(0.9, Mark.Assumed, Ampelography),
        },
        Row(KnownCultivar.Riesling, "Riesling", Recalled(1242), Recalled(2584), 1.2, 1.5, 90, 140),
        Row(KnownCultivar.Sangiovese, "Sangiovese", Guessed(1270), Ranked(2690), 1.8, 2.2, 180, 280),
        Row(KnownCultivar.SauvignonBlanc, "Sauvignon blanc", Recalled(1282), Recalled(2528), 1.3, 1.8, 100, 150) with
        {
            InternodeLength = new(1.1, Mark.Assumed, Ampelography),
        },
        Row(KnownCultivar.Syrah, "Syrah", Recalled(1279), Recalled(2601), 1.3, 1.7, 150, 200) with
        {
            InternodeLength = new(1.1, Mark.Assumed, Ampelography),
            Laterals = new(1.2, Mark.Assumed, "more lateral leaves than Grenache: Louarn et al. 2007; how many more is assumed"),
        },
        Row(KnownCultivar.Tempranillo, "Tempranillo", Guessed(1290), Ranked(2582), 1.6, 2.0, 180, 280) with
        {
            BladeSize = new(1.15, Mark.Assumed, Ampelography),
        },
        Row(KnownCultivar.UgniBlanc, "Ugni blanc", Recalled(1376), Recalled(2799), 1.5, 2.0, 250, 400) with
        {
            BladeSize = new(1.15, Mark.Assumed, Ampelography),
        },
        Row(KnownCultivar.Zinfandel, "Zinfandel", Guessed(1280), Ranked(2609), 1.7, 2.2, 200, 350),
    ];

    /// <summary>The row of a cultivar.</summary>
    public static CultivarRow Of(KnownCultivar cultivar) => Rows[(int)cultivar];

    /// <summary>What the table says for the keys of a scenario; a key in which the cultivar is like the fitted one is left out.</summary>
    public static IReadOnlyList<CultivarValue> ValuesOf(KnownCultivar cultivar)
    {
        var (row, fitted) = (Of(cultivar), Of(KnownCultivar.CabernetSauvignon));
        var stages = new Cultivar();
        var later = row.FloweringSum.Value - fitted.FloweringSum.Value;
        var longer = row.VeraisonSum.Value - row.FloweringSum.Value - (fitted.VeraisonSum.Value - fitted.FloweringSum.Value);
        var size = row.BerryMass.Value / fitted.BerryMass.Value;
        const string BySums = "Cabernet-Sauvignon's and the difference of published sums";
        const string ByBerry = "in proportion to the berry's mass";
        CultivarValue[] values =
        [
            new("cultivar.budbreak_sum", Derived(stages.BudbreakSum + (BudbreakHeatPerFloweringSum * later), BySums)),
            new("cultivar.veraison_sum", Derived(stages.VeraisonSum + (UnitsPerVeraisonSum * longer), BySums)),
            new("cultivar.published_flowering_sum", row.FloweringSum),
            new("cultivar.published_veraison_sum", row.VeraisonSum),
            new("growth.potential_blade_area", Scaled(Growth.PotentialBladeArea, row.BladeSize)),
            new("growth.potential_internode", Scaled(Growth.PotentialInternode, row.InternodeLength)),
            new("growth.lateral_rate", Scaled(Growth.LateralRate, row.Laterals)),
            new("growth.lateral_blade_area", Scaled(Growth.LateralBladeArea, row.BladeSize)),
            new("fruit.clusters_per_shoot", row.ClustersPerShoot),
            new("fruit.berries_per_cluster", row.BerriesPerCluster),
            new("fruit.berry_fresh_mass", row.BerryMass),
            new("fruit.berry_structure", Derived(Fruit.BerryStructure * size, ByBerry)),
            new("fruit.sugar_loading", Derived(Fruit.SugarLoading * size, ByBerry)),
        ];
        // What is as in the fitted cultivar keeps its own mark.
        return [.. values.Where(value => value.Number.Source != Like.Source && (cultivar != KnownCultivar.CabernetSauvignon || value.Number.Mark != Mark.Derived))];
    }

    private static CultivarRow Row(
        KnownCultivar cultivar, string name, MarkedValue flowering, MarkedValue veraison,
        double berryFrom, double berryTo, double clusterFrom, double clusterTo)
    {
        var berry = 0.5 * (berryFrom + berryTo);
        var cluster = 0.5 * (clusterFrom + clusterTo);
        return new CultivarRow
        {
            Cultivar = cultivar,
            Name = name,
            FloweringSum = flowering,
            VeraisonSum = veraison,
            BerryMass = new(Math.Round(berry, 2), Mark.Recalled, FormattableString.Invariant($"{berryFrom:0.0} to {berryTo:0.0} g: {General}")),
            BerriesPerCluster = new(
                Math.Round(cluster * (1 - Fruit.StalkShare) / berry), Mark.Derived,
                FormattableString.Invariant($"clusters of {clusterFrom} to {clusterTo} g ({General}) over the berry's mass")),
            ClustersPerShoot = Clusters,
            BladeSize = Like,
            InternodeLength = Like,
            Laterals = Like,
        };
    }

    private static MarkedValue Recalled(double sum) => new(sum, Mark.Recalled, Parker);

    private static MarkedValue Ranked(double sum) => new(sum, Mark.Derived, Order);

    private static MarkedValue Guessed(double sum) => new(sum, Mark.Assumed, $"{Order}: {Flowering}");

    private static MarkedValue Derived(double value, string rule) => new(Rounded(value), Mark.Derived, rule);

    private static MarkedValue Scaled(double fitted, MarkedValue share) => new(Rounded(fitted * share.Value), share.Mark, share.Source);

    // Four digits are more than any of them is sure of, and read well.
    private static double Rounded(double value) => double.Parse(value.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
