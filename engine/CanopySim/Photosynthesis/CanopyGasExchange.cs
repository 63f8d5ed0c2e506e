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
/// <param name="RespirationGrams">Its own respiration in that, day and night, at air temperature [g CO₂ d⁻¹].</param>
/// <param name="TranspirationLiters">Transpiration of the hours of light [l d⁻¹].</param>
public readonly record struct LeafDay(
    Leaf Leaf, int Surface, double Area, double Efficiency, double AbsorbedParMoles, double NetAssimilationGrams,
    double RespirationGrams, double TranspirationLiters);

/// <summary>
/// Gas exchange of every leaf through a day: the sunlit and the shaded part of the blade by themselves, every hour with light;
/// day respiration alone in the dark hours, at air temperature.
/// </summary>
/// <param name="scenario">The block.</param>
/// <param name="threads">Threads; results are the same for any number.</param>
/// <param name="isRough">True solves every second hour, on the next day those between, for both.</param>
public sealed class CanopyGasExchange(Scenario scenario, int threads, bool isRough = false)
{
    // Wind among the leaves over wind at 2 m. Assumed.
    internal const double WindInCanopy = 0.5;

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
    private readonly int _hourStep = isRough ? 2 : 1;

    /// <summary>The day of every blade in the scene, in the order of surfaces.</summary>
    /// <param name="light">The day's light.</param>
    /// <param name="weather">The day's weather.</param>
    /// <param name="stomatalWater">Factor of conductance that soil water allows [0 to 1].</param>
    /// <param name="supplyIndex">Supply index of each vine, for the sink factor.</param>
    /// <param name="keep">Where each hour is kept; null where nobody asks.</param>
    public IReadOnlyList<LeafDay> Day(LightOfDay light, WeatherDay weather, double stomatalWater, IReadOnlyList<double> supplyIndex, LeafHours? keep = null)
    {
        var blades = BladesOf(light, supplyIndex);
        var solved = SolvedHours(light, weather.Date);
        var batches = solved.Select(hour => BatchOf(weather.Hours[light.Hours[hour]])).ToArray();
        var hours = new CanopyHours(light, _optics, blades, stomatalWater, solved, batches, keep);
        hours.Solve(threads);
        var (day, night) = Respiration(light, weather);
        var days = new LeafDay[blades.Length];
        for (var i = 0; i < days.Length; i++) days[i] = DayOf(i, blades[i], hours, light, day, night);
        return days;
    }

    /// <summary>Factor of capacity by how well the vine's sinks are fed [0.8 to 1.4].</summary>
    public static double SinkFactor(double supplyIndex) =>
        Math.Clamp(1 + (SinkEffect * (1 - supplyIndex)), LeastSinkFactor, MostSinkFactor);

    private int[] SolvedHours(LightOfDay light, DateOnly date)
    {
        var first = light.Hours.Count >= _hourStep ? date.DayNumber % _hourStep : 0;
        return [.. Enumerable.Range(0, light.Hours.Count).Where(hour => hour % _hourStep == first)];
    }

    private LeafBatch BatchOf(WeatherHour hour) => new(
        new LeafEnvironment(hour.AirTemperatureCelsius, hour.VaporPressure, hour.AirPressure, WindInCanopy * hour.WindSpeed, scenario.Site.Co2),
        _parameters);

    // Respiration of the lit and of the dark hours of a leaf at its best, at air temperature [µmol m⁻² h s⁻¹ summed over hours].
    private (double Day, double Night) Respiration(LightOfDay light, WeatherDay weather)
    {
        var (day, night) = (0.0, 0.0);
        for (var hour = 0; hour < weather.Hours.Count; hour++)
        {
            var rate = LeafRespiration.At(weather.Hours[hour].AirTemperatureCelsius, _parameters);
            if (light.Hours.Contains(hour)) day += rate;
            else night += rate;
        }

        return (day, night);
    }

    private CanopyBlade[] BladesOf(LightOfDay light, IReadOnlyList<double> supplyIndex)
    {
        var (leaves, count) = (light.Canopy.Leaves, 0);
        var blades = new CanopyBlade[leaves.Count];
        for (var surface = 0; surface < leaves.Count; surface++)
            if (leaves[surface] is { } leaf) blades[count++] = BladeOf(leaf, surface, light, supplyIndex);
        return blades[..count];
    }

    private CanopyBlade BladeOf(Leaf leaf, int surface, LightOfDay light, IReadOnlyList<double> supplyIndex)
    {
        // The light is that of the blade as placed; by now it is spread over what has grown since. Where places are renewed
        // seldom, half of what has grown counts as lit like the rest: leaves that unfolded since have no light at all. Assumed.
        var area = leaf.Area;
        var efficiency = scenario.LeafAge.At(leaf.PhysiologicalAge);
        var acclimation = Acclimation(leaf.RelativeLight ?? 1);
        var capacity = efficiency * acclimation * SinkFactor(supplyIndex[leaf.Shoot.Vine.Value]);
        var respiration = acclimation * (RespirationWithoutEfficiency + ((1 - RespirationWithoutEfficiency) * efficiency));
        var lit = isRough && light.Canopy.Areas[surface] > 0 ? Math.Sqrt(area * light.Canopy.Areas[surface]) : area;
        return new(leaf, surface, area, lit, efficiency, capacity, respiration, WidthPerRootArea * Math.Sqrt(area));
    }

    // Hours are added in their order, whoever solved them.
    private static LeafDay DayOf(int number, in CanopyBlade blade, CanopyHours hours, LightOfDay light, double day, double night)
    {
        var (lit, wattHours, water) = (0.0, 0.0, 0.0);
        for (var hour = 0; hour < light.Hours.Count; hour++)
            wattHours += light.Solution.AbsorbedPar[light.Solution.IndexOf(hour, blade.Surface)];
        for (var solved = 0; solved < hours.Count; solved++)
        {
            lit += hours.NetAssimilation(solved, number);
            water += Math.Max(0, hours.Transpiration(solved, number));
        }

        var stands = hours.Count > 0 ? light.Hours.Count / (double)hours.Count : 0;
        var net = (lit * stands) - (blade.RespirationFactor * night);
        water *= stands;
        const double GramsOfHours = UnitConversion.SecondsPerHour * UnitConversion.GramsCo2PerMicromole;
        return new LeafDay(
            blade.Leaf,
            blade.Surface,
            blade.Area,
            blade.Efficiency,
            IncidentPar.MolesFromWattHours(wattHours * blade.Area / blade.LitArea),
            net * blade.Area * GramsOfHours,
            blade.RespirationFactor * (day + night) * blade.Area * GramsOfHours,
            water * blade.Area * UnitConversion.SecondsPerHour * 1e-3 * UnitConversion.GramsWaterPerMole * 1e-3);
    }

    private double Acclimation(double relativeLight) =>
        _parameters.ShadeCapacity + ((1 - _parameters.ShadeCapacity) * Math.Min(1, relativeLight / _parameters.FullAcclimationLight));
}
