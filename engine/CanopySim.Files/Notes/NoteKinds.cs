using System.Text.RegularExpressions;

namespace CanopySim.Files.Notes;

/// <summary>One thing that can be noted: how it is called, which units it takes and how to see it in the row.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its name in the column <c>what</c>.</param>
/// <param name="OtherNames">Other names that are understood.</param>
/// <param name="Example">A value and a unit, for the empty sheet.</param>
/// <param name="Help">How it is measured, in a sentence.</param>
public sealed record NoteWord(
    NoteKind Kind, string Name, IReadOnlyList<string> OtherNames, (string Value, string Unit) Example, string Help);

/// <summary>The words of the column <c>what</c>.</summary>
public static partial class NoteKinds
{
    /// <summary>All that can be noted.</summary>
    public static IReadOnlyList<NoteWord> All { get; } =
    [
        new(NoteKind.ShootLength, "shoot_length", ["length", "shoot"], ("45", "cm"),
            "from the base of the shoot, where it leaves the old wood, to its tip"),
        new(NoteKind.Nodes, "nodes", ["node", "node count", "nodes per shoot", "leaves", "unfolded leaves"], ("8", ""),
            "nodes on the same shoot; count from its base and stop at the last leaf of 3 cm (1.2 in) or longer"),
        new(NoteKind.Budbreak, "budbreak", ["percent budbreak", "bud break", "budburst"], ("50", "%"),
            "share of the buds that show green"),
        new(NoteKind.Bloom, "bloom", ["percent bloom", "flowering", "capfall", "cap fall"], ("50", "%"),
            "share of the flower caps that have fallen"),
        new(NoteKind.Veraison, "veraison", ["percent veraison", "color change", "softening"], ("50", "%"),
            "share of the berries that have turned soft or colored"),
        new(NoteKind.LeafSize, "leaf_size", ["leaf", "blade", "leaf length", "leaf length x width"], ("12 x 13", "cm"),
            "length x width of a full-grown blade, from where the stalk meets it to its tip, and across"),
        new(NoteKind.Clusters, "clusters", ["cluster", "clusters per shoot", "bunches", "inflorescences"], ("2", ""),
            "clusters on the shoot, or on the vine where no shoot is named"),
        new(NoteKind.BerrySugar, "berry_sugar", ["sugar", "brix", "berry sample", "berries"], ("16.5", "Brix"),
            "sugar of the juice of berries from all over the block, 100 or more"),
        new(NoteKind.Tip, "tip", ["growing tip", "shoot tip", "tendrils"], ("tendrils above tip", ""),
            "tendrils above tip, tip above tendrils, or stopped"),
        new(NoteKind.UpperInternodes, "upper_internodes", ["internodes", "internode", "upper internode"], ("even", ""),
            "those below the five youngest leaves: even, or shortening towards the tip"),
        new(NoteKind.Spray, "spray", ["sprayed", "cover spray"], ("sulfur first cover", ""),
            "a name of your own; with the word sulfur or oil in it, its cautions are shown"),
        new(NoteKind.Irrigation, "irrigation", ["watering", "water", "irrigated"], ("15", "mm"),
            "mm or inches over the whole ground, or liters or gallons per vine"),
        new(NoteKind.ShootThinning, "shoot_thinning", ["shoots thinned", "thinning shoots", "suckering"], ("12", "shoots/m"),
            "shoots that stayed, per meter or foot of canopy or per vine"),
        new(NoteKind.Tucking, "tucking", ["tucked", "wires lifted", "shoot positioning"], ("", ""),
            "shoots were put between the wires"),
        new(NoteKind.Topping, "topping", ["topped", "hedging top", "trimmed"], ("1.9", "m"),
            "height over the ground that stayed, or nodes"),
        new(NoteKind.SideHedging, "side_hedging", ["sides hedged", "hedging"], ("0.5", "m"),
            "width of the canopy that stayed"),
        new(NoteKind.LeafRemoval, "leaf_removal", ["leaf pulling", "leaves pulled", "deleafing"], ("60", "% morning"),
            "share of the leaves of the fruit zone that went, of both sides or of the morning or afternoon side"),
        new(NoteKind.LateralRemoval, "lateral_removal", ["laterals removed"], ("80", "%"),
            "share of the laterals of the fruit zone that went"),
        new(NoteKind.ClusterThinning, "cluster_thinning", ["fruit thinning", "crop thinning", "green harvest"], ("1", "per shoot"),
            "clusters that stayed on a shoot, or the share of all that went, in %"),
    ];

    private static readonly Dictionary<string, NoteWord> Words = All
        .SelectMany(word => word.OtherNames.Prepend(word.Name).Select(name => (Name: Plain(name), Word: word)))
        .ToDictionary(pair => pair.Name, pair => pair.Word, StringComparer.Ordinal);

    /// <summary>The thing of that name; null where nothing is called so.</summary>
    public static NoteWord? Find(string name) => Words.GetValueOrDefault(Plain(name));

    /// <summary>The word for a kind of note.</summary>
    public static NoteWord Of(NoteKind kind) => All.First(word => word.Kind == kind);

    /// <summary>The names of all things.</summary>
    public static IEnumerable<string> Names => All.Select(word => word.Name);

    /// <summary>The name that an unknown one comes closest to.</summary>
    public static string? Nearest(string name) => Text.NearestName.Among(Plain(name), Words.Keys) is { } near
        ? Words[near].Name
        : null;

    private static string Plain(string name) => Separators().Replace(name.Trim().ToLowerInvariant(), " ");

    [GeneratedRegex(@"[\s_\-]+")]
    private static partial Regex Separators();
}
