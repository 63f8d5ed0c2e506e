using CanopySim.Parameters;

namespace CanopySim.Growth;

/// <summary>
/// Efficiency of a leaf by its age: the share of its own best photosynthetic capacity, piecewise linear between points.
/// Best from 30 to 40 days, falling from 50, 0.45 at 120: Poni et al. 1994, Am J Enol Vitic 45:71-78; 40 days: Kriedemann,
/// Kliewer &amp; Harris 1970, Vitis 9:97-104. The young side and what follows 120 days are shape only.
/// </summary>
public sealed record LeafAgeCurve
{
    [KeyHelp("Points of the curve: age in days, efficiency from 0 to 1; straight lines between them.")]
    public IReadOnlyList<LeafAgePoint> Points { get; init; } =
    [
        new(0, 0.02), new(5, 0.05), new(10, 0.35), new(15, 0.60), new(20, 0.80), new(30, 1.00), new(40, 1.00), new(50, 0.97),
        new(60, 0.90), new(75, 0.78), new(90, 0.67), new(105, 0.56), new(120, 0.45), new(150, 0.25), new(180, 0.05),
    ];

    /// <summary>Efficiency [0 to 1] at an age [d]; the first and last points hold beyond the ends.</summary>
    public double At(double ageDays)
    {
        if (ageDays <= Points[0].Age) return Points[0].Efficiency;
        for (var i = 1; i < Points.Count; i++)
        {
            if (ageDays > Points[i].Age) continue;
            var (from, to) = (Points[i - 1], Points[i]);
            return from.Efficiency + ((to.Efficiency - from.Efficiency) * (ageDays - from.Age) / (to.Age - from.Age));
        }

        return Points[^1].Efficiency;
    }
}

/// <summary>A point of the curve: age [d], efficiency [0 to 1].</summary>
public readonly record struct LeafAgePoint(
    [property: Parameter("d", 0, 500, "Age of a leaf, from its unfolding.", Mark = Mark.Published,
        Source = "Poni et al. 1994; Kriedemann et al. 1970; before 30 d and after 120 d shape only")] double Age,
    [property: Parameter("1", 0, 1, "Share of its own best photosynthetic capacity.", Mark = Mark.Published,
        Source = "Poni et al. 1994; Kriedemann et al. 1970; before 30 d and after 120 d shape only")] double Efficiency);
