using CanopySim.Growth;
using CanopySim.Weather;

namespace CanopySim.Phenology;

/// <summary>
/// Which stages a season has reached, and when. Budbreak is given or follows a heat sum; bloom follows thermal units from
/// budbreak; veraison follows them from bloom, slowed where fruit is short of carbon; ripeness is the day the sugar is there.
/// </summary>
public sealed class Stages(Cultivar cultivar, GrowthParameters growth, DateOnly? givenBudbreak)
{
    /// <summary>Base of the heat sum to budbreak [°C]. Moncur et al. 1989 found about 4, from memory; Richardson's growing degree hours use 5.</summary>
    public const double BudbreakBaseCelsius = 5;

    private double _heatToBudbreak;
    private double _unitsToBloom;

    public DateOnly? Budbreak { get; private set; }

    public DateOnly? Bloom { get; private set; }

    public DateOnly? Veraison { get; private set; }

    public DateOnly? Ripe { get; internal set; }

    /// <summary>Thermal units since budbreak [°C d]; 0 before it.</summary>
    public double ThermalTime { get; private set; }

    /// <summary>Thermal units since bloom [°C d]; null before it.</summary>
    public double? ThermalTimeSinceBloom { get; private set; }

    /// <summary>Share of the way from bloom to veraison [0 to 1].</summary>
    public double VeraisonProgress { get; private set; }

    /// <summary>Thermal units of a day [°C d].</summary>
    public double ThermalUnits(WeatherDay day)
    {
        var sum = 0.0;
        foreach (var hour in day.Hours) sum += ThermalResponse.Rate(hour.AirTemperatureCelsius, growth);
        return sum / day.Hours.Count;
    }

    /// <summary>Adds a day; the supply index is that of the fruit's carbon.</summary>
    public void Advance(WeatherDay day, double supplyIndex)
    {
        if (Budbreak is null)
        {
            AdvanceToBudbreak(day);
            return;
        }

        var units = ThermalUnits(day);
        ThermalTime += units;
        if (Bloom is null)
        {
            _unitsToBloom += units;
            if (_unitsToBloom < cultivar.BloomSum) return;
            Bloom = day.Date;
            ThermalTimeSinceBloom = 0;
            return;
        }

        ThermalTimeSinceBloom += units;
        if (Veraison is not null) return;
        var rate = cultivar.VeraisonRateWithoutSupply + ((1 - cultivar.VeraisonRateWithoutSupply) * Math.Clamp(supplyIndex, 0, 1));
        VeraisonProgress = Math.Min(1, VeraisonProgress + (rate * units / cultivar.VeraisonSum));
        if (VeraisonProgress >= 1) Veraison = day.Date;
    }

    /// <summary>A killing frost before bloom: the way to bloom begins anew from the secondary buds.</summary>
    public void RestartBloom() => _unitsToBloom = 0;

    private void AdvanceToBudbreak(WeatherDay day)
    {
        foreach (var hour in day.Hours) _heatToBudbreak += Math.Max(0, hour.AirTemperatureCelsius - BudbreakBaseCelsius) / day.Hours.Count;
        var broken = givenBudbreak is { } given ? day.Date >= given : _heatToBudbreak >= cultivar.BudbreakSum;
        if (broken) Budbreak = day.Date;
    }
}
