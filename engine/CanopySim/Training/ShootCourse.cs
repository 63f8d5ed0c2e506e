using System.Numerics;

namespace CanopySim.Training;

/// <summary>Where a shoot's next internode points.</summary>
/// <param name="Heading">Horizontal direction to which the shoot tilts, a unit vector in x and y.</param>
/// <param name="Tilt">Angle from upright towards the heading [rad].</param>
/// <param name="Drift">Part along the row that the shoot keeps whatever its tilt.</param>
/// <param name="IsLedBack">True once a wire has turned the shoot back into its wall.</param>
internal readonly record struct ShootCourse(Vector2 Heading, float Tilt, float Drift, bool IsLedBack = false)
{
    // A free shoot that lies level tilts by this much per meter of its own length and meter of free length beyond [rad
    // m⁻²]. Assumed.
    private const float WeightBending = 3.5f;

    // The steeper it stands the less its weight bends it, as the sine of its tilt, but never less than this: no shoot
    // is straight. Assumed.
    private const float LeastLever = 0.2f;

    // The steepest that a hanging shoot turns: straight down.
    private const float HangingTilt = MathF.PI;

    /// <summary>How far from the middle of its curtain the shoot is led down, as a share of half its width.</summary>
    public float Reach { get; init; } = 1;

    /// <summary>Unit vector of the internode.</summary>
    public Vector3 Direction
    {
        get
        {
            var horizontal = MathF.Sin(Tilt);
            return Vector3.Normalize(
                new Vector3(Heading.X * horizontal, (Heading.Y * horizontal) + Drift, MathF.Cos(Tilt)));
        }
    }

    /// <summary>The course bent by the weight of what is beyond.</summary>
    /// <param name="length">Of the internode [m].</param>
    /// <param name="beyond">Length of the shoot from its start on [m].</param>
    public ShootCourse Bent(float length, float beyond)
    {
        // Past upright the shoot leans to the other side.
        var (heading, tilt) = Tilt < 0 ? (-Heading, -Tilt) : (Heading, Tilt);
        tilt = MathF.Min(HangingTilt,
            tilt + (WeightBending * length * beyond * MathF.Max(LeastLever, MathF.Sin(tilt))));
        return this with { Heading = heading, Tilt = tilt };
    }
}
