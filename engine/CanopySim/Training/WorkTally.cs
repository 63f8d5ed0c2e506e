using CanopySim.Carbon;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>What one step of work did in the season, per vine of the cell where it says so.</summary>
/// <param name="Date">The day.</param>
/// <param name="Action">The scenario's key of the action: topping, leaf_removal and so on.</param>
/// <param name="What">What was done, in words, metric.</param>
/// <param name="Shoots">Shoots that were cut, removed or tucked, in the whole cell.</param>
/// <param name="Clusters">Clusters that went, in the whole cell.</param>
/// <param name="Leaves">Unfolded leaves that went, or that a spray reached, in the whole cell.</param>
/// <param name="LeafAreaM2PerVine">Their leaf area, folded leaves with it.</param>
/// <param name="FruitGPerVine">Fresh fruit that went.</param>
public sealed record WorkDone(
    DateOnly Date, string Action, string What, int Shoots, int Clusters, int Leaves, double LeafAreaM2PerVine,
    double FruitGPerVine);

/// <summary>Counts what a step of work takes off, and hears what it could not do.</summary>
internal sealed class WorkTally(int vines)
{
    private readonly List<string> _warnings = [];
    private readonly HashSet<ShootId> _shoots = [];

    /// <summary>Dry mass taken from each vine.</summary>
    public LostMass[] Lost { get; } = new LostMass[vines];

    /// <summary>Shoots that were cut, removed or tucked, each once.</summary>
    public int Shoots => _shoots.Count;

    public int Clusters { get; set; }

    public int Leaves { get; set; }

    /// <summary>Leaf area of the whole cell [m²].</summary>
    public double LeafArea { get; set; }

    /// <summary>Fresh fruit of the whole cell [g].</summary>
    public double Fruit { get; set; }

    /// <summary>True where the canopy has another shape than before.</summary>
    public bool CanopyChanged { get; set; }

    /// <summary>True where anything was done at all, on the canopy or beside it.</summary>
    public bool AnythingDone { get; set; }

    public IReadOnlyList<string> Warnings => _warnings;

    public void Count(Shoot shoot) => _shoots.Add(shoot.Id);

    /// <summary>
    /// Notes a sentence about what was not, or not quite, as the plan wants it; without its subject's name.
    /// </summary>
    public void Warn(string sentence) => _warnings.Add(sentence);
}
