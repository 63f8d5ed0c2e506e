namespace CanopySim.Plants;

/// <summary>A leafy axis: order 1 from a spur, order 2 (lateral) from an axillary bud of this season.</summary>
public sealed class Shoot(ShootId id, VineId vine, int order, double positionAlongRow, double vigor, int wall = 0)
{
    private readonly List<Phytomer> _phytomers = [];

    public ShootId Id { get; } = id;

    public VineId Vine { get; } = vine;

    public int Order { get; } = order;

    /// <summary>Where the shoot leaves the cordon, along the row in the cell [m].</summary>
    public double PositionAlongRow { get; } = positionAlongRow;

    /// <summary>Number of the wall of foliage that the shoot belongs to.</summary>
    public int Wall { get; } = wall;

    /// <summary>Vigor against the mean shoot [1].</summary>
    public double Vigor { get; } = vigor;

    /// <summary>From the base up.</summary>
    public IReadOnlyList<Phytomer> Phytomers => _phytomers;

    /// <summary>Nodes that have appeared, with the part of the one to come.</summary>
    public double NodeProgress { get; internal set; }

    /// <summary>True once the tip has stopped, was cut or was killed: no further node comes.</summary>
    public bool TipStopped { get; internal set; }

    /// <summary>Nodes that the tip added on each of the last days, oldest first; the tip stops by their sum.</summary>
    internal Queue<double> RecentProgress { get; } = new();

    /// <summary>Lowest nodes that the wires hold, the rest bends freely; null where the shoot is led as it grows.</summary>
    public int? HeldNodes { get; internal set; }

    /// <summary>Rate of new leaves against other laterals: more on the nodes under a cut [1].</summary>
    public double Release { get; internal set; } = 1;

    /// <summary>Dry mass of the axis [g].</summary>
    public double StemDryMass { get; internal set; }

    /// <summary>Dry mass that today's warmth allows the axis to thicken by [g].</summary>
    public double PotentialThickening { get; internal set; }

    /// <summary>Length of the axis [m].</summary>
    public double Length
    {
        get
        {
            var length = 0.0;
            foreach (var phytomer in _phytomers) length += phytomer.InternodeLength;
            return length;
        }
    }

    /// <summary>Nodes whose leaf has unfolded, whether it still hangs there or not.</summary>
    public int UnfoldedNodes { get; internal set; }

    internal void Add(Phytomer phytomer) => _phytomers.Add(phytomer);

    /// <summary>Cuts the axis so that only its lowest nodes stay; what was cut is returned.</summary>
    internal IReadOnlyList<Phytomer> CutAbove(int nodes)
    {
        var cut = _phytomers.Skip(nodes).ToList();
        _phytomers.RemoveRange(nodes, _phytomers.Count - nodes);
        TipStopped = true;
        NodeProgress = nodes;
        UnfoldedNodes = Math.Min(UnfoldedNodes, nodes);
        return cut;
    }
}
