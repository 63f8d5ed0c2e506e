using CanopySim.Assessment;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.Sky;

namespace CanopySim.Files.Moments;

/// <summary>A moment's light with the rows of its leaves and the scene it was computed on.</summary>
public sealed record LightedScene(LightMoment Moment, IReadOnlyList<LeafLightRow> Leaves, Scene Scene);

/// <summary>Turns a light solution of one moment into the numbers of <c>light.json</c>.</summary>
public static class LightMomentMaker
{
    /// <param name="utc">The moment.</param>
    /// <param name="sun">Where the sun stands then.</param>
    /// <param name="scene">The scene.</param>
    /// <param name="incident">What fell on it; null in the dark.</param>
    /// <param name="solution">Light of that one moment.</param>
    /// <param name="sunInCell">Unit vector towards the sun in the cell's frame.</param>
    /// <param name="fruitZone">Light in the fruit zone; null in the dark, or where it was not read.</param>
    public static LightedScene Make(
        DateTimeOffset utc,
        SolarPosition sun,
        Scene scene,
        IncidentLight? incident,
        LightSolution solution,
        System.Numerics.Vector3 sunInCell,
        FruitZoneLight? fruitZone = null)
    {
        var areas = scene.SurfaceAreas();
        var rows = new List<LeafLightRow>();
        var (leafArea, sunlitArea) = (0.0, 0.0);
        for (var surface = 0; surface < scene.SurfaceCount; surface++)
        {
            if (scene.Kinds[surface] != SurfaceKind.Blade) continue;
            var lit = incident is not null;
            var sunlit = lit ? solution.SunlitShare[surface] : 0;
            leafArea += areas[surface];
            sunlitArea += sunlit * areas[surface];
            rows.Add(new LeafLightRow(
                scene.LeafIds[surface],
                areas[surface],
                sunlit,
                lit ? solution.AbsorbedPar[surface] / areas[surface] * UnitConversion.MicromolesPerJouleOfDaylightPar
                    : 0,
                lit ? solution.AbsorbedNir[surface] / areas[surface] : 0));
        }

        return new LightedScene(
            new LightMoment
            {
                TimeUtc = utc,
                SunZenithDeg = sun.ZenithDegrees,
                SunAzimuthDeg = sun.AzimuthDegrees,
                SunDirectionInCell = (sunInCell.X, sunInCell.Y, sunInCell.Z),
                CellAcrossM = scene.Cell.Across,
                CellAlongM = scene.Cell.Along,
                LeafAreaM2 = leafArea,
                SunlitLeafAreaM2 = sunlitArea,
                GroundSunlitFraction = incident is null ? 0 : solution.GroundSunlitFraction[0],
                SkyGapFraction = solution.SkyGapFraction,
                Par = Band(incident is null ? default : solution.ParBudgets[0]),
                Nir = Band(incident is null ? default : solution.NirBudgets[0]),
                FruitZone = incident is null || fruitZone is null ? null : Zone(fruitZone, ParAbove(incident)),
            },
            rows,
            scene);
    }

    /// <summary>PAR that falls on the horizontal above the canopy [µmol m⁻² s⁻¹].</summary>
    public static double ParAbove(IncidentLight incident) => UnitConversion.MicromolesPerJouleOfDaylightPar
        * (incident.DiffuseHorizontalPar + (incident.DirectNormalPar * Math.Max(0, incident.SunDirection?.Z ?? 0)));

    private static FruitZoneMoment Zone(FruitZoneLight zone, double above)
    {
        const double Micromoles = UnitConversion.MicromolesPerJouleOfDaylightPar;
        return new FruitZoneMoment(
            zone.Height, above, zone.Up.Total * Micromoles, zone.Right.Total * Micromoles, zone.Left.Total * Micromoles,
                zone.Clusters * Micromoles);
    }

    private static LightBand Band(LightBudget budget) => new(
        budget.IncidentDirect,
        budget.IncidentDiffuse,
        budget.AbsorbedLeaves,
        budget.AbsorbedWood + budget.AbsorbedClusters,
        budget.AbsorbedGround,
        budget.Reflected);
}
