using System.Globalization;
using CanopySim.Files.Charts;
using CanopySim.Files.Quantities;
using CanopySim.Files.Report;
using CanopySim.Training;
using CanopySim.Water;

namespace CanopySim.Files.Comparison;

/// <summary>Planned work as a grower says it: what is done and when, in the reader's units.</summary>
public static class WorkPhrases
{
    /// <summary>Keys of the lists of work, each with the steps that a scenario has there.</summary>
    public static IReadOnlyList<(string Key, Func<Scenario, IEnumerable<WorkStep>> Steps)> Lists { get; } =
    [
        ("canopy_work.shoot_thinning", of => of.CanopyWork.ShootThinning),
        ("canopy_work.tucking", of => of.CanopyWork.Tucking),
        ("canopy_work.topping", of => of.CanopyWork.Topping),
        ("canopy_work.side_hedging", of => of.CanopyWork.SideHedging),
        ("canopy_work.leaf_removal", of => of.CanopyWork.LeafRemoval),
        ("canopy_work.lateral_removal", of => of.CanopyWork.LateralRemoval),
        ("canopy_work.cluster_thinning", of => of.CanopyWork.ClusterThinning),
        ("canopy_work.sprays", of => of.CanopyWork.Sprays),
        ("soil.irrigation", of => of.Soil.Irrigation),
    ];

    /// <summary>A step: "shoots topped 2 m over the ground 10 days after bloom".</summary>
    public static string Of(WorkStep step, Units units) => $"{What(step, units)} {When(step, units)}";

    private static string What(WorkStep step, Units units) => step switch
    {
        ShootThinning thinning => $"shoots thinned to {Stays(thinning, units)}"
            + (thinning.First == ThinningOrder.Crowded ? ", the most crowded first," : ", the weakest first,"),
        Tucking => "shoots tucked between the wires",
        Topping { Nodes: { } nodes } => $"shoots topped at {nodes} nodes",
        Topping topping => $"shoots topped {Length(topping.Height, units)} over the ground",
        SideHedging hedging => $"sides hedged to a width of {Length(hedging.Width, units)}",
        LeafRemoval { Share: var share, Side: var side, Laterals: var laterals } removal =>
            $"{Share(share)} leaves pulled {Zone(removal.From, removal.To, "in the fruit zone", units)}"
            + (side == CanopySide.Both ? "" : $" on the {Word($"{side}")} side")
            + (laterals ? "" : ", but for those of laterals,"),
        LateralRemoval removal =>
            $"{Share(removal.Share)} laterals taken off {Zone(removal.From, removal.To, "in the fruit zone", units)}",
        ClusterThinning { ClustersPerShoot: { } stay } =>
            $"clusters thinned to {stay} a shoot",
        ClusterThinning thinning => $"{Share(thinning.Share ?? 1)} clusters taken off",
        Spray spray => $"sprayed ({spray.Label}) {Zone(spray.From, spray.To, "all over", units)}",
        Irrigation water => $"{ReadersUnits.Show(Number($"{water.Amount:0.##} mm"), units)} of water given",
        _ => throw new ArgumentException($"no words for {step.GetType().Name}", nameof(step)),
    };

    private static string When(WorkStep step, Units units) => (step.On, step.Stage, step.WhenShootsReach) switch
    {
        ({ } day, _, _) => $"on {SeasonSentences.Date(day)}",
        (_, { } stage, _) => (step.DaysAfter ?? 0) switch
        {
            0 => $"at {Word($"{stage}")}",
            1 => $"1 day after {Word($"{stage}")}",
            var days => $"{days} days after {Word($"{stage}")}",
        },
        (_, _, { } length) => $"when shoots reach {Length(length, units)}",
        _ => "at no time",
    };

    private static string Stays(ShootThinning thinning, Units units) => thinning.ShootsPerVine is { } perVine
        ? $"{perVine} a vine"
        : PerLength(Number($"{thinning.ShootsPerMeter:0.##} 1/m"), units);

    /// <summary>"12 a meter", of a value such as "12 1/m".</summary>
    public static string PerLength(string value, Units units) => ReadersUnits.Show(value, units)
        .Replace(" 1/m", " a meter", StringComparison.Ordinal).Replace(" 1/ft", " a foot", StringComparison.Ordinal);

    private static string Zone(double? from, double? to, string whole, Units units) => (from, to) switch
    {
        (null, null) => whole,
        ({ } low, { } high) => $"from {Length(low, units)} to {Length(high, units)} over the cordon",
        ({ } low, null) => $"above {Length(low, units)} over the cordon",
        (null, { } high) => $"below {Length(high, units)} over the cordon",
    };

    private static string Share(double share) =>
        share >= 1 ? "all" : Number($"{100 * share:0.#} % of the");

    private static string Length(double? meters, Units units) => ReadersUnits.Show(Number($"{meters:0.###} m"), units);

    private static string Word(string choice) => choice.ToLowerInvariant();

    private static string Number(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
