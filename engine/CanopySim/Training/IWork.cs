using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// One step of work that can be done in the season: <see cref="ShootThinningWork"/>, <see cref="TuckingWork"/>,
/// <see cref="ToppingWork"/>, <see cref="SideHedgingWork"/>, <see cref="LateralRemovalWork"/>,
/// <see cref="LeafRemovalWork"/>, <see cref="ClusterThinningWork"/>, <see cref="SprayWork"/> and
/// <see cref="IrrigationWork"/>.
/// </summary>
internal interface IWork
{
    WorkStep Step { get; }

    /// <summary>What is done, in words, metric.</summary>
    string Words { get; }

    /// <summary>True where there is nothing to do without shoots.</summary>
    bool NeedsShoots => true;

    /// <summary>Does it on the whole cell.</summary>
    void Do(Canopy canopy, WorkTally tally);

    /// <summary>
    /// True where the other step does the same thing to the same part of the canopy, so that the second meets what the
    /// first left.
    /// </summary>
    bool Overlaps(IWork other) => other.GetType() == GetType();
}

/// <summary>What work needs to know of a block.</summary>
internal sealed class WorkPlace(Scenario scenario)
{
    public Scenario Scenario { get; } = scenario;

    public CanopyPlaces Places { get; } = new(scenario);

    /// <summary>The walls of a row.</summary>
    public IReadOnlyList<FoliageWall> Walls { get; } = TrellisLayout.WallsOf(scenario.Trellis);

    public FoliageWall WallOf(Shoot shoot) => TrellisLayout.WallOf(Scenario, shoot);

    /// <summary>Where a point of a shoot is, seen from the shoot's wall.</summary>
    public WallPlace PlaceOf(Shoot shoot, Vector3 point) =>
        WallPlace.Of(WallOf(shoot), Scenario.Rows.AcrossOf(Scenario.Rows.RowOf(shoot.Vine)), point, Places);
}
