using CanopySim.Parameters;

namespace CanopySim.Assessment;

/// <summary>What is written of a good canopy: a range with both ends in it, or one end open.</summary>
/// <param name="Low">Lower end, in the unit of its item; null where there is none.</param>
/// <param name="High">Upper end; null where there is none.</param>
/// <param name="Mark">How sure it is.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record PublishedRange(double? Low, double? High, Mark Mark, string Source)
{
    private const string Handbook = "Smart & Robinson 1991, from memory";
    private const string Trial = "Kliewer & Dokoozlian 2005, AJEV 56:170-181";

    public static PublishedRange ShootsPerMeter { get; } =
        new(10, 20, Mark.Recalled, Handbook + ": 15, 10 to 20 a meter of canopy");

    public static PublishedRange ShootLength { get; } = new(60, 90, Mark.Recalled, Handbook + ": 0.6 to 0.9 m");

    public static PublishedRange ShootNodes { get; } =
        new(10, 15, Mark.Recalled, Handbook + ": 10 to 15; its card takes 10 to 20");

    public static PublishedRange Internode { get; } = new(6, 8, Mark.Recalled, Handbook);

    public static PublishedRange LateralNodes { get; } =
        new(5, 10, Mark.Recalled, Handbook + ": on all laterals of a shoot");

    public static PublishedRange GrowingTips { get; } =
        new(0, 0.05, Mark.Recalled, Handbook + ": under 5 % after veraison");

    public static PublishedRange LeafSize { get; } =
        new(100, 200, Mark.Published, "Oxford Companion to Wine 2006: a typical leaf, larger or smaller by cultivar");

    public static PublishedRange LeafLayers { get; } =
        new(1.0, 1.5, Mark.Published, "wineskills.co.uk after Smart's card");

    public static PublishedRange Gaps { get; } = new(0.2, 0.4, Mark.Recalled, Handbook);

    public static PublishedRange ExteriorLeaves { get; } = new(0.8, 1, Mark.Recalled, Handbook);

    public static PublishedRange ExteriorClusters { get; } = new(0.5, 1, Mark.Recalled, Handbook);

    public static PublishedRange InteriorLeaves { get; } =
        new(0, 0.2, Mark.Derived, "derived: the rest of 80 to 100 % exterior, " + Handbook);

    public static PublishedRange InteriorClusters { get; } =
        new(0, 0.5, Mark.Derived, "derived: the rest of 50 to 100 % exterior, " + Handbook);

    public static PublishedRange LeafArea(bool isDivided) => new(2, isDivided ? 4 : 5, Mark.Published, Trial);

    public static PublishedRange LeafAreaDensity(bool isDivided) => new(3, isDivided ? 6 : 7, Mark.Published, Trial);

    public static PublishedRange LeafAreaPerFruit(bool isDivided) =>
        isDivided ? new(0.5, 0.8, Mark.Published, Trial) : new(0.8, 1.2, Mark.Published, Trial);

    public static PublishedRange YieldToPrunings(bool isDivided) => new(isDivided ? 5 : 4, 10, Mark.Published, Trial);

    public static PublishedRange Prunings(bool isDivided) =>
        isDivided ? new(0.4, 0.8, Mark.Published, Trial) : new(0.5, 1, Mark.Published, Trial);

    /// <summary>Where a value stands; both ends lie within.</summary>
    public SheetVerdict Judge(double value) =>
        value < Low ? SheetVerdict.Below : value > High ? SheetVerdict.Above : SheetVerdict.Within;
}

/// <summary>Where a value of the canopy sheet stands against what is written.</summary>
public enum SheetVerdict
{
    /// <summary>Under the lower end.</summary>
    Below,

    /// <summary>In the range, its ends included.</summary>
    Within,

    /// <summary>Over the upper end.</summary>
    Above,

    /// <summary>The model does not see it: it must be judged in the row.</summary>
    JudgeInRow,

    /// <summary>The season did not come to it, or there was nothing to measure.</summary>
    NotReached,
}
