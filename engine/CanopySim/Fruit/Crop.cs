namespace CanopySim.Fruit;

/// <summary>The fruit of a vine: berries, their structure and sugar. Changed by <see cref="BerryGrowth"/>, frost and cuts.</summary>
public sealed class Crop
{
    /// <summary>Berries after set; 0 before bloom.</summary>
    public double Berries { get; internal set; }

    /// <summary>Dry mass of skins, seeds, pulp and stalks [g].</summary>
    public double StructureDryMass { get; internal set; }

    /// <summary>Structure that full supply would have built by now [g].</summary>
    public double PotentialStructure { get; internal set; }

    /// <summary>Sugar in the berries [g].</summary>
    public double Sugar { get; internal set; }

    /// <summary>Dry mass of the fruit [g].</summary>
    public double DryMass => StructureDryMass + Sugar;
}
