using System.Numerics;
using CanopySim.Fruit;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.Photosynthesis;
using CanopySim.Weather;

namespace CanopySim.Assessment;

/// <summary>An hour of the fruit of one side.</summary>
/// <param name="Ppfd">PAR that falls on the clusters, per area of their whole outer surface [µmol m⁻² s⁻¹].</param>
/// <param name="SunlitShare">Share of that surface that the sun reaches.</param>
/// <param name="SurfaceTemperature">Warmest spot of a cluster, mean over clusters [°C].</param>
/// <param name="HighestTemperature">Warmest spot of the warmest cluster [°C].</param>
/// <param name="BrowningShare">Share of clusters with a spot at the threshold of browning or over it.</param>
/// <param name="NecrosisShare">The same of necrosis.</param>
public readonly record struct FruitHour(
    double Ppfd, double SunlitShare, double SurfaceTemperature, double HighestTemperature, double BrowningShare,
    double NecrosisShare);

/// <summary>Light and heat on the clusters of a day, side by side and hour by hour.</summary>
public sealed class FruitHours
{
    // A cluster with less of its surface in the sun than this has no sunlit spot that an hour warms. Assumed.
    private const double LeastSunlitShare = 0.01;

    private readonly FruitHour[] _hours;

    private FruitHours(FruitClusters clusters, FruitHour[] hours, double[] incident, bool[] isMorning, bool[] isLit) =>
        (Clusters, _hours, IncidentPpfd, IsMorning, IsLit) = (clusters, hours, incident, isMorning, isLit);

    public FruitClusters Clusters { get; }

    /// <summary>PAR on the horizontal over the canopy in each hour of the day [µmol m⁻² s⁻¹].</summary>
    public IReadOnlyList<double> IncidentPpfd { get; }

    /// <summary>True for hours whose sun stands in the east.</summary>
    public IReadOnlyList<bool> IsMorning { get; }

    /// <summary>True for hours with light.</summary>
    public IReadOnlyList<bool> IsLit { get; }

    public FruitHour At(int side, int hour) => _hours[(side * IncidentPpfd.Count) + hour];

    /// <summary>Reads a day's light on the fruit.</summary>
    /// <param name="clusters">The clusters of the canopy that was lit.</param>
    /// <param name="light">The day's light.</param>
    /// <param name="weather">The day's weather.</param>
    /// <param name="scenario">The block.</param>
    /// <param name="berryRadius">Radius of a berry [m].</param>
    public static FruitHours Read(FruitClusters clusters, LightOfDay light, WeatherDay weather, Scenario scenario,
        double berryRadius)
    {
        var count = weather.Hours.Count;
        var (hours, incident) = (new FruitHour[clusters.Sides.Count * count], new double[count]);
        var (isMorning, isLit) = (new bool[count], new bool[count]);
        for (var hour = 0; hour < count; hour++)
            for (var side = 0; side < clusters.Sides.Count; side++)
                hours[(side * count) + hour] = Dark(weather.Hours[hour], scenario.FruitHeat);

        var azimuth = UnitConversion.RadiansFromDegrees(scenario.Rows.Azimuth);
        for (var index = 0; index < light.Hours.Count; index++)
        {
            var hour = light.Hours[index];
            var ofHour = light.Incident[index];
            var sun = ofHour.SunDirection ?? Vector3.UnitZ;
            incident[hour] = UnitConversion.MicromolesPerJouleOfDaylightPar
                * ((ofHour.DirectNormalPar * Math.Max(0, sun.Z)) + ofHour.DiffuseHorizontalPar);
            isLit[hour] = true;
            isMorning[hour] = (sun.X * Math.Cos(azimuth)) + (sun.Y * Math.Sin(azimuth)) > 0;
            var air = new BerryAir(
                weather.Hours[hour].AirTemperatureCelsius, weather.Hours[hour].AirPressure,
                CanopyGasExchange.WindInCanopy * weather.Hours[hour].WindSpeed);
            ReadHour(hours, count, hour, index, clusters, light, scenario, air, berryRadius);
        }

        return new FruitHours(clusters, hours, incident, isMorning, isLit);
    }

    /// <summary>
    /// Radius of a berry of a crop [m]: a sphere a little heavier than water, 1.08 g cm⁻³ (about must, from memory).
    /// </summary>
    public static double BerryRadius(Crop crop, FruitParameters fruit, BerryGrowth growth)
    {
        const double GramsPerCubicMeter = 1.08e6;
        const double LeastGrams = 0.1;
        var grams = crop.Berries > 0
            ? growth.FreshMass(crop) * (1 - fruit.StalkShare) / crop.Berries
            * BerryGrowth.StructureProgress(crop, fruit)
            : 0;
        return Math.Cbrt(3 * Math.Max(LeastGrams, grams) / (4 * Math.PI * GramsPerCubicMeter));
    }

    // Without sun and sky fruit is as warm as the air.
    private static FruitHour Dark(in WeatherHour hour, FruitHeatParameters heat)
    {
        var air = hour.AirTemperatureCelsius;
        return new FruitHour(0, 0, air, air, air >= heat.BrowningTemperature ? 1 : 0,
            air >= heat.NecrosisTemperature ? 1 : 0);
    }

    private static void ReadHour(
        FruitHour[] hours, int count, int hour, int index, FruitClusters clusters, LightOfDay light, Scenario scenario,
        BerryAir air, double berryRadius)
    {
        var (solution, optics, heat) = (light.Solution, scenario.Optics, scenario.FruitHeat);
        var (keptPar, keptNir) = (1 - optics.WoodParReflectance, 1 - optics.WoodNirReflectance);
        var incident = light.Incident[index];
        var nirPerPar = incident.DirectNormalPar > 0 && keptPar > 0
            ? incident.DirectNormalNir * keptNir / (incident.DirectNormalPar * keptPar) : 0;
        for (var side = 0; side < clusters.Sides.Count; side++)
            hours[(side * count) + hour] = new FruitHour(0, 0, 0, double.MinValue, 0, 0);
        foreach (var cluster in clusters.Clusters)
        {
            var at = solution.IndexOf(index, cluster.Surface);
            var (par, nir, direct, sunlit) = (
                solution.AbsorbedPar[at], solution.AbsorbedNir[at], solution.AbsorbedParDirect[at],
                solution.SunlitShare[at]);
            var directNir = Math.Min(nir, direct * nirPerPar);
            var isSunlit = sunlit >= LeastSunlitShare && direct > 0;

            // Direct light that lies on too small a spot is spread over the cluster, so that no energy is lost.
            var spread = isSunlit ? par - direct + nir - directNir : par + nir;
            var beam = isSunlit ? (keptPar * incident.DirectNormalPar) + (keptNir * incident.DirectNormalNir) : 0;
            var temperature = SunlitBerry.HottestSpot(
                new BerrySun(beam, Math.Max(0, spread) / cluster.Area, berryRadius, cluster.Diameter), air,
                heat.Compactness);
            ref var of = ref hours[(cluster.Side * count) + hour];
            var (area, number) = (clusters.AreaOfSide[cluster.Side], clusters.CountOfSide[cluster.Side]);
            of = new FruitHour(
                of.Ppfd + (keptPar > 0 ? UnitConversion.MicromolesPerJouleOfDaylightPar * par / keptPar / area : 0),
                of.SunlitShare + (sunlit * cluster.Area / area),
                of.SurfaceTemperature + (temperature / number),
                Math.Max(of.HighestTemperature, temperature),
                of.BrowningShare + (temperature >= heat.BrowningTemperature ? 1.0 / number : 0),
                of.NecrosisShare + (temperature >= heat.NecrosisTemperature ? 1.0 / number : 0));
        }
    }
}
