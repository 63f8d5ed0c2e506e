namespace CanopySim.Plants;

/// <summary>A node with the internode below it, its leaf, its axillary bud and what stands opposite the leaf.</summary>
public sealed class Phytomer(int rank, double potentialInternode, Leaf leaf)
{
    /// <summary>Counted from the shoot's base, 1 = oldest.</summary>
    public int Rank { get; } = rank;

    /// <summary>Length that the internode reaches where nothing is lacking [m].</summary>
    public double PotentialInternode { get; } = potentialInternode;

    /// <summary>Length of the internode [m].</summary>
    public double InternodeLength { get; internal set; }

    /// <summary>Length that today's warmth and water allow to be added [m].</summary>
    public double PotentialIncrement { get; internal set; }

    /// <summary>Thermal units since the node appeared [°C d].</summary>
    public double ThermalAge { get; internal set; }

    /// <summary>The leaf; null once it is shed or removed.</summary>
    public Leaf? Leaf { get; internal set; } = leaf;

    /// <summary>The lateral from the axillary bud; null while the bud rests.</summary>
    public Shoot? Lateral { get; internal set; }

    /// <summary>True for a node just under a cut, whose lateral pushes.</summary>
    public bool Released { get; internal set; }

    /// <summary>How strongly the lateral of a released node pushes, by its place under the cut [0 to 1].</summary>
    public double ReleaseStrength { get; internal set; }

    /// <summary>Thermal units since the cut that released the node [°C d].</summary>
    public double UnitsSinceRelease { get; internal set; }

    /// <summary>True where the lateral was taken off: the bud has nothing left to push with.</summary>
    public bool LateralRemoved { get; internal set; }

    /// <summary>The cluster opposite the leaf; null for a tendril or nothing.</summary>
    public Cluster? Cluster { get; internal set; }

    /// <summary>True where the cluster was cut off: none comes in its place.</summary>
    public bool ClusterRemoved { get; internal set; }

    /// <summary>Place in the rhythm of three: 0 bears neither tendril nor cluster, 1 and 2 do (Lebon et al. 2004, Ann Bot 93:263-274).</summary>
    public int RhythmPosition => ((Rank - 2) % 3 + 3) % 3;

    /// <summary>True where a tendril stands: positions 1 and 2 above the first two nodes, without a cluster.</summary>
    public bool HasTendril => Rank > 2 && RhythmPosition != 0 && Cluster is null && !ClusterRemoved;
}

/// <summary>A cluster: its number of berries after set; null before.</summary>
public sealed class Cluster
{
    public double? Berries { get; internal set; }
}
