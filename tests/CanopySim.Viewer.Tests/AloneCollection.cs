namespace CanopySim.Viewer.Tests;

/// <summary>Tests that count memory: what others take meanwhile would count too.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class AloneCollection
{
    public const string Name = "alone";
}
