using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.Plants;
using CanopySim.Weather;

namespace CanopySim.Photosynthesis;

/// <summary>A leaf's day. Efficiency is that of its age.</summary>
/// <param name="Leaf">The leaf.</param>
/// <param name="Surface">Its surface in the scene.</param>
/// <param name="Area">Area on which the day was computed [m²].</param>
/// <param name="Efficiency">Efficiency of its age [0 to 1].</param>
/// <param name="AbsorbedParMoles">PAR absorbed [mol d⁻¹].</param>
/// <param name="NetAssimilationGrams">Net assimilation over 24 hours [g CO₂ d⁻¹].</param>
/// <param name="TranspirationLiters">Transpiration of the hours of light [l d⁻¹].</param>
public readonly record struct LeafDay(
    Leaf Leaf, int Surface, double Area, double Efficiency, double AbsorbedParMoles, double NetAssimilationGrams, double TranspirationLiters);

/// <summary>
/// Gas exchange of every leaf through a day: the sunlit and the shaded part of the blade by themselves, every hour with light;
/// day respiration alone in the dark hours, at air temperature.
/// </summary>
public sealed class CanopyGasExchange(Scenario scenario, int threads)
{
    // Wind among the leaves over wind at 2 m. Assumed.
    private const double WindInCanopy = 0.5;

    // Width of a blade over the root of its area: width / length about 1.1 (Buttaro et al. 2015).
    private const double WidthPerRootArea = 1.1;

    // Rd of a leaf with no efficiency left, against one at its best. Assumed.
    private const double RespirationWithoutEfficiency = 0.35;

    // How strongly an unfed (or glutted) vine raises (or lowers) its leaves' capacity, and its bounds. Assumed; that leaves
    // compensate: Miller et al. 1997, Vitis 36:109-114.
    private const double SinkEffect = 0.35;
    private const double LeastSinkFactor = 0.8;
    private const double MostSinkFactor = 1.4;

    private readonly LeafParameters _parameters = scenario.Leaf;
    private readonly Optics _optics = scenario.Optics;

    /// <summary>The day of every blade in the scene, in the order of surfaces.</summary>
    /// <param name="light">The day's light.</param>
    /// <param name="weather">The day's weather.</param>
    /// <param name="stomatalWater">Factor of conductance that soil water allows [0 to 1].</param>
    /// <param name="supplyIndex">Supply index of each vine, for the sink factor.</param>
    public IReadOnlyList<LeafDay> Day(LightOfDay light, WeatherDay weather, double stomatalWater, IReadOnlyList<double> supplyIndex)
    {
        var solvers = light.Hours.Select(hour => SolverOf(weather.Hours[hour])).ToArray();
        var nightRespiration = NightRespiration(light, weather);
        var surfaces = Enumerable.Range(0, light.Canopy.Leaves.Count).Where(surface => light.Canopy.Leaves[surface] is not null).ToArray();
        var days = new LeafDay[surfaces.Length];
        const int LeavesAtOnce = 32;
        var blocks = (surfaces.Length + LeavesAtOnce - 1) / LeavesAtOnce;
        Parallel.For(0, blocks, new ParallelOptions { MaxDegreeOfParallelism = threads }, block =>
        {
            for (var i = block * LeavesAtOnce; i < Math.Min(surfaces.Length, (block + 1) * LeavesAtOnce); i++)
            {
                var leaf = light.Canopy.Leaves[surfaces[i]]!;
                days[i] = DayOf(leaf, surfaces[i], light, solvers, nightRespiration, stomatalWater, supplyIndex[leaf.Shoot.Vine.Value]);
            }
        });
        return days;
    }

    /// <summary>Factor of capacity by how well the vine's sinks are fed [0.8 to 1.4].</summary>
    public static double SinkFactor(double supplyIndex) =>
        Math.Clamp(1 + (SinkEffect * (1 - supplyIndex)), LeastSinkFactor, MostSinkFactor);

    private LeafSolver SolverOf(WeatherHour hour) => new(
        new LeafEnvironment(hour.AirTemperatureCelsius, hour.VaporPressure, hour.AirPressure, WindInCanopy * hour.WindSpeed, scenario.Site.Co2),
        _parameters);

    // Respiration of the dark hours of a leaf at its best [µmol m⁻² h s⁻¹ summed over hours].
    private double NightRespiration(LightOfDay light, WeatherDay weather)
    {
        var sum = 0.0;
        for (var hour = 0; hour < weather.Hours.Count; hour++)
            if (!light.Hours.Contains(hour))
                sum += LeafRespiration.At(weather.Hours[hour].AirTemperatureCelsius, _parameters);
        return sum;
    }

    private LeafDay DayOf(
        Leaf leaf, int surface, LightOfDay light, LeafSolver[] solvers, double nightRespiration, double stomatalWater, double supplyIndex)
    {
        var area = light.Canopy.Areas[surface];
        var efficiency = scenario.LeafAge.At(leaf.PhysiologicalAge);
        var acclimation = Acclimation(leaf.RelativeLight ?? 1);
        var capacity = efficiency * acclimation * SinkFactor(supplyIndex);
        var respiration = acclimation * (RespirationWithoutEfficiency + ((1 - RespirationWithoutEfficiency) * efficiency));
        var width = WidthPerRootArea * Math.Sqrt(area);
        var (net, wattHours, water) = (-respiration * nightRespiration, 0.0, 0.0);
        for (var hour = 0; hour < solvers.Length; hour++)
        {
            var parts = LeafParts.Of(light, hour, surface, area, _optics);
            var shaded = solvers[hour].Solve(new LeafState(parts.ShadedPpfd, parts.ShadedNir, capacity, respiration, width, stomatalWater));
            var (assimilation, transpiration) = (shaded.NetAssimilation, shaded.Transpiration);
            if (parts.SunlitShare > 0)
            {
                var sunlit = solvers[hour].Solve(new LeafState(parts.SunlitPpfd, parts.SunlitNir, capacity, respiration, width, stomatalWater));
                assimilation += parts.SunlitShare * (sunlit.NetAssimilation - shaded.NetAssimilation);
                transpiration += parts.SunlitShare * (sunlit.Transpiration - shaded.Transpiration);
            }

            net += assimilation;
            water += Math.Max(0, transpiration);
            wattHours += light.Solution.AbsorbedPar[light.Solution.IndexOf(hour, surface)];
        }

        return new LeafDay(
            leaf,
            surface,
            area,
            efficiency,
            IncidentPar.MolesFromWattHours(wattHours),
            net * area * UnitConversion.SecondsPerHour * UnitConversion.GramsCo2PerMicromole,
            water * area * UnitConversion.SecondsPerHour * 1e-3 * UnitConversion.GramsWaterPerMole * 1e-3);
    }

    private double Acclimation(double relativeLight) =>
        _parameters.ShadeCapacity + ((1 - _parameters.ShadeCapacity) * Math.Min(1, relativeLight / _parameters.FullAcclimationLight));
}
