using CanopySim.Assessment;
using CanopySim.Training;

namespace CanopySim.Files.Notes;

/// <summary>What a line of field notes tells.</summary>
public enum NoteKind
{
    ShootLength,
    Nodes,
    Budbreak,
    Bloom,
    Veraison,
    LeafSize,
    Clusters,
    BerrySugar,
    Tip,
    UpperInternodes,
    Spray,
    Irrigation,
    ShootThinning,
    Tucking,
    Topping,
    SideHedging,
    LeafRemoval,
    LateralRemoval,
    ClusterThinning,
}

/// <summary>What the number of a note measures.</summary>
public enum NoteMeasure
{
    /// <summary>No number.</summary>
    Nothing,

    /// <summary>A length [m].</summary>
    Length,

    /// <summary>A number of nodes, or of other things that are counted.</summary>
    Count,

    /// <summary>A share [0 to 1].</summary>
    Share,

    /// <summary>Sugar [Brix].</summary>
    Sugar,

    /// <summary>Area of one side of a blade [m²].</summary>
    LeafArea,

    /// <summary>Water over the whole ground [mm].</summary>
    Depth,

    /// <summary>Water for each vine [l].</summary>
    LitersPerVine,

    /// <summary>Things for each meter of canopy [1/m].</summary>
    PerMeter,

    /// <summary>Things for each vine.</summary>
    PerVine,

    /// <summary>Things for each shoot.</summary>
    PerShoot,
}

/// <summary>A line of field notes, understood.</summary>
public sealed record FieldNote
{
    /// <summary>Where it stands in the file.</summary>
    public required InputPlace Place { get; init; }

    public required DateOnly Date { get; init; }

    /// <summary>Name of the vine, as written; empty where the note is of the block.</summary>
    public string Vine { get; init; } = "";

    /// <summary>Name of the shoot, as written; empty where the note is of no one shoot.</summary>
    public string Shoot { get; init; } = "";

    public required NoteKind Kind { get; init; }

    /// <summary>What <see cref="Value"/> measures.</summary>
    public NoteMeasure Measure { get; init; }

    /// <summary>The number, in the unit of <see cref="Measure"/>; 0 for <see cref="NoteMeasure.Nothing"/>.</summary>
    public double Value { get; init; }

    /// <summary>State of a tip, for <see cref="NoteKind.Tip"/>.</summary>
    public TipState? Tip { get; init; }

    /// <summary>What the internodes below a tip do, for <see cref="NoteKind.UpperInternodes"/>.</summary>
    public UpperInternodes? Upper { get; init; }

    /// <summary>Side of the canopy, for <see cref="NoteKind.LeafRemoval"/>.</summary>
    public CanopySide Side { get; init; }

    /// <summary>What was sprayed, for <see cref="NoteKind.Spray"/>: the writer's own name, and what it holds.</summary>
    public string Label { get; init; } = "";

    public SprayKind Spray { get; init; }

    /// <summary>What else was written; it is kept and not interpreted.</summary>
    public string Remark { get; init; } = "";
}

/// <summary>A file of field notes.</summary>
/// <param name="Notes">The lines that say something, by date and, within a date, as they stand.</param>
/// <param name="Remarks">Lines that hold a remark only.</param>
public sealed record FieldNotes(IReadOnlyList<FieldNote> Notes, IReadOnlyList<string> Remarks);
