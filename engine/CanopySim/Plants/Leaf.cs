namespace CanopySim.Plants;

/// <summary>A leaf blade with its petiole: area, age and the light it has lived in. Changed by Growth/ and by work in the canopy.</summary>
public sealed class Leaf(LeafId id, Shoot shoot, int rank, double potentialArea)
{
    /// <summary>A leaf has unfolded when its blade is this long [m]: the contract's 3 cm.</summary>
    public const double UnfoldedMidrib = 0.03;

    // Area = 1.0 x midrib², from LA = -0.465 + 0.914 L W with W/L about 1.1: Buttaro et al. 2015, Photosynthetica 53:342-348.
    private const double AreaPerSquaredMidrib = 1.0;

    /// <summary>Area of a blade that long [m²].</summary>
    public const double UnfoldedArea = AreaPerSquaredMidrib * UnfoldedMidrib * UnfoldedMidrib;

    // 0.7 to 0.9 of the midrib: general ampelography, from memory.
    private const double PetiolePerMidrib = 0.8;

    // Null before the first spray: most leaves never see one.
    private List<SprayMark>? _sprayMarks;

    public LeafId Id { get; } = id;

    public Shoot Shoot { get; } = shoot;

    /// <summary>Number of the node from the shoot's base, 1 = oldest.</summary>
    public int Rank { get; } = rank;

    /// <summary>Area that the blade reaches where nothing is lacking [m²].</summary>
    public double PotentialArea { get; } = potentialArea;

    /// <summary>One-sided area [m²].</summary>
    public double Area { get; internal set; }

    /// <summary>Area that today's warmth and water allow to be added [m²].</summary>
    public double PotentialIncrement { get; internal set; }

    /// <summary>Thermal units since the blade began to expand [°C d].</summary>
    public double ThermalAge { get; internal set; }

    public DateOnly? UnfoldedOn { get; internal set; }

    /// <summary>Days since unfolding; 0 before it.</summary>
    public int AgeDays { get; internal set; }

    /// <summary>Age by which its efficiency is read [d]: the calendar's, but slower on a vine that lost leaves.</summary>
    public double PhysiologicalAge { get; internal set; }

    /// <summary>Age by which the leaf wears out [d]: runs faster than <see cref="AgeDays"/> in deep shade.</summary>
    public double Wear { get; internal set; }

    /// <summary>Absorbed PAR per area against what lies over the canopy, smoothed over a week [1]; null before its first lit day.</summary>
    public double? RelativeLight { get; internal set; }

    /// <summary>Area that hung there when the leaf was last sprayed [m²]; 0 before.</summary>
    public double SprayedArea => _sprayMarks is [.., var last] ? last.Area : 0;

    public bool HasUnfolded => UnfoldedOn is not null;

    /// <summary>Area that hung there when a spray reached the leaf [m²]; 0 where it did not.</summary>
    /// <param name="spray">Number of the spray in the scenario's list, from 0.</param>
    public double AreaReachedBy(int spray)
    {
        var reached = 0.0;
        foreach (var mark in _sprayMarks ?? [])
            if (mark.Spray == spray) reached = mark.Area;
        return reached;
    }

    internal void Mark(int spray) => (_sprayMarks ??= []).Add(new SprayMark(spray, Area));

    /// <summary>Length of the midrib [m].</summary>
    public double MidribLength => Math.Sqrt(Area / AreaPerSquaredMidrib);

    public double PetioleLength => PetiolePerMidrib * MidribLength;

    private readonly record struct SprayMark(int Spray, double Area);
}
