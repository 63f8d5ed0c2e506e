namespace CanopySim.Plants;

/// <summary>The vines of the cell, and the numbering of their shoots and leaves.</summary>
public sealed class Canopy(IReadOnlyList<Vine> vines)
{
    private int _nextShoot;
    private int _nextLeaf;

    public IReadOnlyList<Vine> Vines { get; } = vines;

    internal ShootId NextShootId() => new(_nextShoot++);

    internal LeafId NextLeafId() => new(_nextLeaf++);

    /// <summary>Leaves that have been numbered so far.</summary>
    public int LeavesSoFar => _nextLeaf;

    public IEnumerable<Leaf> Leaves() => Vines.SelectMany(vine => vine.Leaves());

    public IEnumerable<Shoot> PrimaryShoots() => Vines.SelectMany(vine => vine.Shoots);
}
