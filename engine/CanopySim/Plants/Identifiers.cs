namespace CanopySim.Plants;

/// <summary>Number of a vine in the cell, from 0. A type of its own so that it cannot be taken for another number.</summary>
public readonly record struct VineId(int Value);

/// <summary>Number of a shoot in the cell, from 0, primaries and laterals alike.</summary>
public readonly record struct ShootId(int Value);

/// <summary>Number of a leaf in the cell, from 0, in the order of appearance.</summary>
public readonly record struct LeafId(int Value);
