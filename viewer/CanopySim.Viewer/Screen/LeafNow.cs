using System.Globalization;
using CanopySim.Drawing.Leaves;
using CanopySim.Files.Charts;
using CanopySim.Files.Recording;
using CanopySim.Geometry;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// What one leaf is and does on a day and in an hour: the numbers of <c>leaves.csv</c> and of the recorded hours.
/// </summary>
/// <param name="Blade">Where it grew.</param>
/// <param name="UnfoldedOn">Day of unfolding; null while folded.</param>
/// <param name="AgeDays">Days since then; −1 while folded.</param>
/// <param name="Area">On the evening [m²].</param>
/// <param name="Efficiency">Efficiency of its age [0 to 1].</param>
/// <param name="LightNow">PAR absorbed in the hour [µmol m⁻² s⁻¹]; 0 in the dark.</param>
/// <param name="LightOfDayMoles">PAR absorbed in the day [mol].</param>
/// <param name="Temperature">Of the blade in the hour [°C]; in the dark that of the air.</param>
/// <param name="AssimilationNow">
/// Net assimilation in the hour [µmol m⁻² s⁻¹]; in the dark its respiration, below 0.
/// </param>
/// <param name="IsDark">Whether the hour has no light.</param>
/// <param name="CarbonOfDayGrams">Net assimilation over 24 hours [g CO₂].</param>
public sealed record LeafNow(
    DrawnBlade Blade, DateOnly? UnfoldedOn, int AgeDays, double Area, double Efficiency, double LightNow,
    double LightOfDayMoles, double Temperature, double AssimilationNow, bool IsDark,
    double CarbonOfDayGrams)
{
    private const double SquareCentimeters = 1e4;

    public double AreaCm2 => SquareCentimeters * Area;

    /// <summary>The leaf at a place among the blades of a day.</summary>
    public static LeafNow Of(SeasonRecording recording, int day, int hour, int index)
    {
        var (leaves, hours, date) = (recording.Leaves(day), recording.Hours(day), recording.Row(day).Date);
        var at = Array.IndexOf(hours.Hours, (byte)hour);
        var age = leaves.AgeDays[index];
        var isDark = at < 0;
        return new LeafNow(
            recording.Canopy(day).Blades[index], age >= 0 ? date.AddDays(-age) : null, age, leaves.Area[index],
            leaves.Efficiency[index],
            isDark ? 0 : hours.AbsorbedPpfd[hours.IndexOf(at, index)], leaves.AbsorbedParMoles[index],
            isDark ? DarkHours.Temperature(recording, day, hour) : hours.Temperature[hours.IndexOf(at, index)],
            isDark ? DarkHours.Assimilation(recording, day, hour)[index]
                : hours.NetAssimilation[hours.IndexOf(at, index)],
            isDark, leaves.NetAssimilationGrams[index]);
    }

    /// <summary>The sentence that a reader asks of a leaf first.</summary>
    public string Sentence()
    {
        if (UnfoldedOn is null) return "This leaf has not unfolded yet.";
        var state = AgeDays < 30 && Efficiency < 0.95 ? "still on its way to its best" : Efficiency >= 0.9
            ? "at its best"
            : Efficiency >= 0.6 ? "past its best, still useful" : Efficiency >= 0.4 ? "well past its best"
                : "near its end";
        return string.Create(
            CultureInfo.InvariantCulture,
                $"This leaf is {AgeDays} days old and {state}: it works at {100 * Efficiency:0} % of what it could.");
    }

    /// <summary>Names and values, in the reader's units.</summary>
    public IEnumerable<(string What, string Value)> Rows(Units units, int hour, double? ripeningShare)
    {
        yield return ("Shoot", Blade.Order == 1
            ? string.Create(CultureInfo.InvariantCulture, $"{Blade.Shoot + 1}")
            : string.Create(CultureInfo.InvariantCulture, $"{Blade.Shoot + 1}, a lateral"));
        yield return ("Rank from its base", Measure.Number(Blade.Rank, 0));
        yield return ("Unfolded on", UnfoldedOn is { } on ? TimeStrip.SeasonDate(on) : "not yet");
        yield return ("Age", AgeDays >= 0 ? $"{Measure.Number(AgeDays, 0)} days" : "folded");
        yield return ("Area", Measure.LeafAreaOfShoot.Text(units, AreaCm2, 1));
        yield return ("Efficiency of its age", $"{Measure.Number(100 * Efficiency, 0)} %");
        yield return ($"Light, {TimeStrip.HourWords(hour)}", $"{Measure.Number(LightNow, 0)} µmol/(m² s)");
        yield return ("Light of the day", $"{Measure.Number(LightOfDayMoles / Area, 1)} mol/m²");
        yield return ("Temperature", Measure.Temperature(units, Temperature, 1) + (IsDark ? ", as the air" : ""));
        yield return (IsDark ? "Assimilation, dark" : "Assimilation",
            $"{Measure.Number(AssimilationNow, IsDark ? 2 : 1)} µmol/(m² s)");
        yield return ("Carbon of the day", $"{Measure.Number(CarbonOfDayGrams, 3)} g of CO₂");
        if (ripeningShare is { } share)
            yield return ("Share in ripening",
                $"{QuantityText.Number(LeafQuantity.RipeningShare, 100 * share, units)} % of all leaves");
    }
}
