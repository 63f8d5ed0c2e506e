namespace CanopySim.Parameters;

/// <summary>How sure a value is. Every parameter carries one; <c>canopysim check</c> prints it.</summary>
public enum Mark
{
    /// <summary>Seen in published text; the source is named beside the value.</summary>
    Published,

    /// <summary>Follows by arithmetic from published values.</summary>
    Derived,

    /// <summary>From memory, with the source that is remembered.</summary>
    Recalled,

    /// <summary>Common practice, no source.</summary>
    CommonPractice,

    /// <summary>Fitted so that results meet a named figure.</summary>
    Fitted,

    /// <summary>Assumed: plausible, nothing behind it.</summary>
    Assumed,

    /// <summary>Given by the user in the scenario.</summary>
    Given,
}
