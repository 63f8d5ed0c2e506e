namespace CanopySim.Parameters;

/// <summary>
/// What a scenario key needs to be read strictly and to be explained: the unit it is held in, its range, how sure its
/// default is and where that comes from.
/// </summary>
/// <param name="unit">The unit of the property, as people write it: "m", "cm2", "degC d", "umol m-2 s-1"; "1" for a plain number.</param>
/// <param name="min">Smallest value taken.</param>
/// <param name="max">Largest value taken.</param>
/// <param name="help">One sentence for the schema, the starter scenario and <c>check</c>.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class ParameterAttribute(string unit, double min, double max, string help) : Attribute
{
    public string Unit { get; } = unit;

    public double Min { get; } = min;

    public double Max { get; } = max;

    public string Help { get; } = help;

    /// <summary>Whether a temperature is a difference, of which 3.6 °F are 2 °C.</summary>
    public bool IsDifference { get; init; }

    /// <summary>How sure the default is.</summary>
    public Mark Mark { get; init; } = Mark.CommonPractice;

    /// <summary>Where the default comes from; may be empty only where it is given or assumed; of a fitted one, first the figure it was fitted to.</summary>
    public string Source { get; init; } = "";
}
