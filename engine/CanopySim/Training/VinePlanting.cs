using CanopySim.Carbon;
using CanopySim.Numerics;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>Sets the vines of the cell, and lets their shoots break along the cordon.</summary>
public static class VinePlanting
{
    // Dry mass of a vine's permanent parts: half by its ground, half by its cordon; 5 kg on 5.85 m² and 1.95 m. Assumed.
    private const double KilogramsPerSquareMeter = 2.5 / 5.85;
    private const double KilogramsPerCordonMeter = 2.5 / 1.95;

    private const double LeastVigor = 0.4;

    /// <summary>The vines without shoots, each in the middle of its piece of row.</summary>
    public static Canopy Plant(Scenario scenario)
    {
        var rows = scenario.Rows;
        var kilograms = scenario.Carbon.PerennialMass
            ?? (KilogramsPerSquareMeter * rows.GroundAreaPerVine) + (KilogramsPerCordonMeter * rows.VineSpacing);
        var vines = new List<Vine>();
        for (var i = 0; i < rows.VinesInCell; i++)
        {
            var carbon = new VineCarbon(kilograms * 1000, scenario.Carbon.InitialReserves * kilograms * 1000);
            vines.Add(new Vine(new VineId(i), (i + 0.5) * rows.VineSpacing, carbon));
        }

        return new Canopy(vines);
    }

    /// <summary>Shoots that a vine keeps: the wanted number a metre on its piece of row, to the nearest whole shoot.</summary>
    public static int ShootsPerVine(Scenario scenario) =>
        Math.Max(1, (int)Math.Round(scenario.CanopyWork.ShootsPerMeter * scenario.Rows.VineSpacing, MidpointRounding.AwayFromZero));

    /// <summary>Lets a vine's buds break: shoots evenly along the cordon, their vigor drawn by seed; those near the trunk are the weaker.</summary>
    public static IReadOnlyList<Shoot> BreakBuds(Canopy canopy, Vine vine, Scenario scenario)
    {
        // The ends of a cordon grow stronger than its middle (apical dominance; the size is assumed).
        const double WeakerAtTrunk = 0.05;
        var count = ShootsPerVine(scenario);
        var spacing = scenario.Rows.VineSpacing;
        var shoots = new List<Shoot>();
        for (var i = 0; i < count; i++)
        {
            var id = canopy.NextShootId();
            var offset = ((i + 0.5) / count) - 0.5;
            var chance = scenario.Growth.VigorSpread * SeededValue.Normal(scenario.Seed, "shoot vigor", id.Value);
            var vigor = Math.Max(LeastVigor, 1 + chance + (WeakerAtTrunk * ((4 * Math.Abs(offset)) - 1)));
            var shoot = new Shoot(id, vine.Id, order: 1, vine.PositionAlongRow + (offset * spacing), vigor);
            vine.Add(shoot);
            shoots.Add(shoot);
        }

        return shoots;
    }
}
