namespace CanopySim.Parameters;

/// <summary>One sentence on a scenario key that is not a quantity: a name, a choice, a date, a section.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class KeyHelpAttribute(string help) : Attribute
{
    public string Help { get; } = help;
}
