namespace CanopySim.Fitting;

/// <summary>What was seen of the vines.</summary>
public enum ObservedQuantity
{
    /// <summary>Mean length of the shoots [m].</summary>
    ShootLength,

    /// <summary>Mean number of nodes a shoot.</summary>
    Nodes,

    /// <summary>Day on which half the buds had broken, as a day number.</summary>
    Budbreak,

    /// <summary>Day on which half the caps had fallen, as a day number.</summary>
    Bloom,

    /// <summary>Day on which half the berries had turned, as a day number.</summary>
    Veraison,

    /// <summary>Area of a full-grown blade of a shoot's middle [m²].</summary>
    LeafSize,

    /// <summary>Mean clusters a shoot.</summary>
    ClustersPerShoot,

    /// <summary>Sugar of the fruit [Brix].</summary>
    Sugar,
}

/// <summary>Whether an observation is a value, or only bounds it.</summary>
public enum Bound
{
    None,

    /// <summary>The true value is at least this.</summary>
    AtLeast,

    /// <summary>The true value is at most this.</summary>
    AtMost,
}

/// <summary>One thing that was seen on one day, the mean of all notes of it.</summary>
/// <param name="Date">The day.</param>
/// <param name="Quantity">What it is.</param>
/// <param name="Value">What was seen, in the quantity's unit.</param>
/// <param name="StandardError">How far that may be from what the model calls so, in the same unit.</param>
/// <param name="Bound">Whether it only bounds the value.</param>
public sealed record Observation(
    DateOnly Date, ObservedQuantity Quantity, double Value, double StandardError, Bound Bound = Bound.None)
{
    /// <summary>Observed less predicted; 0 where the observation bounds, and the prediction keeps to it.</summary>
    public double Innovation(double predicted, double disturbance) => Bound switch
    {
        Bound.AtLeast when predicted >= Value => 0,
        Bound.AtMost when predicted <= Value => 0,
        _ => Value + disturbance - predicted,
    };
}
