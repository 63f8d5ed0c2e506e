using CanopySim.Parameters;

namespace CanopySim.Training;

/// <summary>A stage by which work can be timed.</summary>
public enum WorkStage
{
    Budbreak,
    Bloom,
    Veraison,
    Ripe,
}

/// <summary>
/// When a step of work is done, once: exactly one of <see cref="On"/>, <see cref="Stage"/> and
/// <see cref="WhenShootsReach"/>. A step by stage falls due on the stage's day, or so many days after it; ripeness is
/// known only in the evening, so work on that day is done on the next.
/// </summary>
public abstract record WorkStep
{
    [KeyHelp("Day of the work.")]
    public DateOnly? On { get; init; }

    [KeyHelp("Stage on whose day the work is done: budbreak, bloom, veraison or ripe.")]
    public WorkStage? Stage { get; init; }

    [Parameter("1", 0, 250, "Days after that stage.", Mark = Mark.Given)]
    public int? DaysAfter { get; init; }

    [Parameter("m", 0.05, 6, "Mean shoot length at which the work is done.", Mark = Mark.Given)]
    public double? WhenShootsReach { get; init; }

    /// <summary>True where both steps are timed alike, and so fall on one day.</summary>
    public bool IsTimedAs(WorkStep other) =>
        On == other.On && Stage == other.Stage && (DaysAfter ?? 0) == (other.DaysAfter ?? 0)
        && WhenShootsReach == other.WhenShootsReach;
}

/// <summary>
/// Work in a zone of the canopy, by height over the cordon; what is left out is the end of the fruit zone.
/// </summary>
public abstract record ZoneStep : WorkStep
{
    [Parameter("m", -3, 3,
        "Lower end of the zone: height over the cordon, negative below it; left out, that of the fruit zone.",
        Mark = Mark.Given)]
    public double? From { get; init; }

    [Parameter("m", -3, 3,
        "Upper end of the zone: height over the cordon, negative below it; left out, that of the fruit zone.",
        Mark = Mark.Given)]
    public double? To { get; init; }

    /// <summary>Ends of the zone on a wall: heights over its cordon [m].</summary>
    public (double From, double To) Within(FoliageWall wall) => (From ?? wall.FruitZone.From, To ?? wall.FruitZone.To);
}

/// <summary>Which side of a wall of foliage.</summary>
public enum CanopySide
{
    Both,
    Right,
    Left,

    /// <summary>The side that faces east of the row.</summary>
    Morning,

    /// <summary>The side that faces west of it.</summary>
    Afternoon,
}
