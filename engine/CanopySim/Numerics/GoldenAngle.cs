namespace CanopySim.Numerics;

/// <summary>Turn from one item of an even spiral to the next: multiples of it never gather.</summary>
public static class GoldenAngle
{
    /// <summary>π (3 − √5) [rad], the smaller part of a turn divided by the golden ratio. Vogel 1979, from memory.</summary>
    public const double Radians = 2.399963229728653;
}
