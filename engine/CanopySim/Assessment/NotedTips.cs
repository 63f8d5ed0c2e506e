namespace CanopySim.Assessment;

/// <summary>How the finished internodes below a tip look to someone in the row.</summary>
public enum UpperInternodes
{
    /// <summary>About as long as those below them, or longer.</summary>
    Even,

    /// <summary>Each shorter than the one below it.</summary>
    Shortening,
}

/// <summary>What was noted of the tips on a day: shoots, or looks along the row, of each kind.</summary>
/// <param name="Date">The day.</param>
/// <param name="GrowingFreely">Tips that their tendrils overtop.</param>
/// <param name="Slowing">Tips that stand above their tendrils.</param>
/// <param name="Stopped">Tips that stopped.</param>
/// <param name="Even">Shoots whose upper internodes are even.</param>
/// <param name="Shortening">Shoots whose upper internodes get shorter.</param>
public readonly record struct NotedTips(
    DateOnly Date, int GrowingFreely, int Slowing, int Stopped, int Even = 0, int Shortening = 0)
{
    public int Tips => GrowingFreely + Slowing + Stopped;

    public int Internodes => Even + Shortening;

    /// <summary>The state of most tips; slowing where it is a tie; null where no tip was noted.</summary>
    public TipState? State => Tips == 0 ? null : TipReading.Most(GrowingFreely, Slowing, Stopped);

    /// <summary>What most upper internodes do; shortening where it is a tie; null where none were noted.</summary>
    public UpperInternodes? Upper => Internodes == 0 ? null
        : Shortening >= Even ? UpperInternodes.Shortening : UpperInternodes.Even;
}
