using CanopySim.Geometry;
using CanopySim.Plants;
using CanopySim.Training;

namespace CanopySim.Protection;

/// <summary>Part of a canopy, as seen by who sprays it.</summary>
public enum CoverZone
{
    /// <summary>Blades whose middle lies in the fruit zone, on shoots and laterals.</summary>
    FruitZone,

    /// <summary>Other blades of the shoots themselves.</summary>
    Shoots,

    /// <summary>Other blades of laterals.</summary>
    Laterals,
}

/// <summary>What of a zone a spray has not reached, a vine's mean.</summary>
/// <param name="Spray">Number of the spray in the scenario's list, from 0; null for all that were done together.</param>
/// <param name="Zone">The zone.</param>
/// <param name="LeafArea">Leaf area there now [m²].</param>
/// <param name="UncoveredArea">
/// Of that, what unfolded or expanded since, or was not reached [m²]; of all sprays, since the last that reached the leaf.
/// </param>
/// <param name="NewLeaves">Unfolded leaves there that it did not reach at all.</param>
public readonly record struct ZoneCover(
    int? Spray, CoverZone Zone, double LeafArea, double UncoveredArea, double NewLeaves);

/// <summary>
/// Counts the leaf that came after each spray, leaf by leaf: a blade is covered to the area that it had when a spray
/// reached it. How well or how long a spray protects, and what rain takes off, is not counted.
/// </summary>
public static class SprayCover
{
    /// <summary>
    /// The cover by each spray that was done, zone by zone, and where there are several, last by all of them; nothing
    /// without a spray.
    /// </summary>
    /// <param name="scenario">The block.</param>
    /// <param name="canopy">The canopy as it stands.</param>
    /// <param name="sprays">Numbers of the sprays that were done.</param>
    public static IReadOnlyList<ZoneCover> Of(Scenario scenario, Canopy canopy, IReadOnlyList<int> sprays)
    {
        if (sprays.Count == 0) return [];
        var place = new WorkPlace(scenario);
        var blades = new List<(Leaf Leaf, CoverZone Zone)>();
        foreach (var shoot in canopy.PrimaryShoots())
            foreach (var blade in place.Places.Blades(shoot))
                blades.Add((blade.Leaf, ZoneOf(place, shoot, blade)));
        var cover = new List<ZoneCover>();
        foreach (var spray in sprays.Count > 1 ? [.. sprays.Select(spray => (int?)spray), null] : (int?[])[sprays[0]])
            foreach (var zone in Enum.GetValues<CoverZone>())
                cover.Add(Of(spray, zone, blades, canopy.Vines.Count));
        return cover;
    }

    private static ZoneCover Of(int? spray, CoverZone zone, List<(Leaf Leaf, CoverZone Zone)> blades, double vines)
    {
        var (area, uncovered, leaves) = (0.0, 0.0, 0);
        foreach (var (leaf, at) in blades)
        {
            if (at != zone) continue;
            var reached = spray is { } one ? leaf.AreaReachedBy(one) : leaf.SprayedArea;
            area += leaf.Area;
            uncovered += Math.Max(0, leaf.Area - reached);
            if (reached == 0 && leaf.HasUnfolded) leaves++;
        }

        return new ZoneCover(spray, zone, area / vines, uncovered / vines, leaves / vines);
    }

    private static CoverZone ZoneOf(WorkPlace place, Shoot shoot, PlacedBlade blade)
    {
        var zone = place.WallOf(shoot).FruitZone;
        var height = place.PlaceOf(shoot, blade.Middle).HeightOverCordon;
        if (height >= zone.From && height <= zone.To) return CoverZone.FruitZone;
        return blade.Leaf.Shoot.Order == 1 ? CoverZone.Shoots : CoverZone.Laterals;
    }
}
