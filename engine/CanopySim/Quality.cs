namespace CanopySim;

/// <summary>How finely light is computed.</summary>
public enum Quality
{
    Draft,
    Standard,
    Fine,
}
