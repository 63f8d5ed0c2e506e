using CanopySim.Carbon;
using CanopySim.Numerics;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>Sets the vines of the cell, and lets their shoots break along the cordon.</summary>
public static class VinePlanting
{
    // Dry mass of a vine's permanent parts: half by its ground, half by its cordon; 5 kg on 5.85 m² and 1.95 m.
    // Assumed.
    private const double KilogramsPerSquareMeter = 2.5 / 5.85;
    private const double KilogramsPerCordonMeter = 2.5 / 1.95;

    private const double LeastVigor = 0.4;

    /// <summary>The vines without shoots, each in the middle of its piece of row.</summary>
    public static Canopy Plant(Scenario scenario)
    {
        var rows = scenario.Rows;
        var kilograms = scenario.Carbon.PerennialMass
            ?? (KilogramsPerSquareMeter * rows.GroundAreaPerVine)
            + (KilogramsPerCordonMeter * TrellisLayout.CordonMetersPerVine(scenario));
        var vines = new List<Vine>();
        for (var i = 0; i < rows.VineCount; i++)
        {
            var carbon = new VineCarbon(kilograms * 1000, scenario.Carbon.InitialReserves * kilograms * 1000);
            vines.Add(new Vine(new VineId(i), ((i % rows.VinesInCell) + 0.5) * rows.VineSpacing, carbon));
        }

        return new Canopy(vines);
    }

    /// <summary>
    /// Shoots that a vine keeps: the wanted number a meter of canopy on its piece of row, to the nearest whole shoot.
    /// </summary>
    public static int ShootsPerVine(Scenario scenario) => Math.Max(1, (int)Math.Round(
        scenario.CanopyWork.ShootsPerMeter * scenario.Rows.VineSpacing
        * TrellisLayout.CanopyMetersPerRowMeter(scenario.Trellis),
        MidpointRounding.AwayFromZero));

    /// <summary>
    /// Lets a vine's buds break: shoots go to the walls in turn and stand evenly along each cordon, their vigor drawn
    /// by seed; those near the trunk are the weaker. On a bush all stand round its head.
    /// </summary>
    public static IReadOnlyList<Shoot> BreakBuds(Canopy canopy, Vine vine, Scenario scenario)
    {
        // The ends of a cordon grow stronger than its middle (apical dominance; the size is assumed).
        const double WeakerAtTrunk = 0.05;
        var count = ShootsPerVine(scenario);
        var spacing = scenario.Rows.VineSpacing;
        var walls = TrellisLayout.CanopyMetersPerRowMeter(scenario.Trellis);
        // Walls that share a cordon take its spurs in turn.
        var cordons = TrellisLayout.CordonsOf(scenario.Trellis).Count;
        var hasCordon = scenario.Trellis.Form != TrellisForm.Bush;
        var shoots = new List<Shoot>();
        for (var i = 0; i < count; i++)
        {
            var id = canopy.NextShootId();
            var (cordon, place) = (i % cordons, i / cordons);
            var onCordon = (count - cordon + cordons - 1) / cordons;
            var offset = ((place + 0.5) / onCordon) - 0.5;
            var chance = scenario.Growth.VigorSpread * SeededValue.Normal(scenario.Seed, "shoot vigor", id.Value);
            var byPlace = hasCordon ? WeakerAtTrunk * ((4 * Math.Abs(offset)) - 1) : 0;
            var vigor = Math.Max(LeastVigor, 1 + chance + byPlace);
            var position = hasCordon ? vine.PositionAlongRow + (offset * spacing) : vine.PositionAlongRow;
            var shoot = new Shoot(id, vine.Id, order: 1, position, vigor, i % walls);
            vine.Add(shoot);
            shoots.Add(shoot);
        }

        return shoots;
    }
}
