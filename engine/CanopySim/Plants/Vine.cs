using CanopySim.Carbon;
using CanopySim.Fruit;

namespace CanopySim.Plants;

/// <summary>A vine: its shoots, its permanent wood and roots, its reserves and its crop.</summary>
public sealed class Vine(VineId id, double positionAlongRow, VineCarbon carbon)
{
    private readonly List<Shoot> _shoots = [];

    public VineId Id { get; } = id;

    /// <summary>Where the trunk stands, along the row in the cell [m].</summary>
    public double PositionAlongRow { get; } = positionAlongRow;

    /// <summary>Primary shoots.</summary>
    public IReadOnlyList<Shoot> Shoots => _shoots;

    public VineCarbon Carbon { get; } = carbon;

    public Crop Crop { get; } = new();

    /// <summary>Leaf area that was cut off this season [m²].</summary>
    public double RemovedLeafArea { get; internal set; }

    /// <summary>Leaf area that fell of age this season [m²].</summary>
    public double ShedLeafArea { get; internal set; }

    internal void Add(Shoot shoot) => _shoots.Add(shoot);

    internal void Remove(Shoot shoot) => _shoots.Remove(shoot);

    internal void RemoveAllShoots() => _shoots.Clear();

    /// <summary>Primary shoots and their laterals.</summary>
    public IEnumerable<Shoot> AllShoots()
    {
        foreach (var shoot in _shoots)
        {
            yield return shoot;
            foreach (var phytomer in shoot.Phytomers)
                if (phytomer.Lateral is { } lateral)
                    yield return lateral;
        }
    }

    /// <summary>All leaves that hang, unfolded or not.</summary>
    public IEnumerable<Leaf> Leaves()
    {
        foreach (var shoot in AllShoots())
            foreach (var phytomer in shoot.Phytomers)
                if (phytomer.Leaf is { } leaf)
                    yield return leaf;
    }

    /// <summary>Clusters on all shoots.</summary>
    public IEnumerable<Cluster> Clusters()
    {
        foreach (var shoot in _shoots)
            foreach (var phytomer in shoot.Phytomers)
                if (phytomer.Cluster is { } cluster)
                    yield return cluster;
    }
}
