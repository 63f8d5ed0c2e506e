namespace CanopySim;

/// <summary>How finely light is computed.</summary>
public enum Quality
{
    /// <summary>For the many members of an ensemble, whose spread is far wider than its error.</summary>
    Rough,

    Draft,
    Standard,
    Fine,
}
