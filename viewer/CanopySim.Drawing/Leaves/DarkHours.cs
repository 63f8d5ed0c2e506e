using CanopySim.Files.Recording;
using CanopySim.Numerics;
using CanopySim.Photosynthesis;

namespace CanopySim.Drawing.Leaves;

/// <summary>
/// Leaves in the hours without light, which are not recorded but follow from what is: leaves are then as warm as the
/// air, and give off what their day's carbon lacks beside the sum of its lit hours, spread over the dark hours as
/// respiration is by temperature.
/// </summary>
public static class DarkHours
{
    private const double GramsPerMicromoleHour =
        UnitConversion.SecondsPerHour * UnitConversion.GramsCo2PerMicromole;

    /// <summary>Whether nothing of leaves was recorded in an hour because it was dark.</summary>
    public static bool IsDark(SeasonRecording recording, int day, int hour)
    {
        var hours = recording.Hours(day);
        return hours.Count > 0 && Array.IndexOf(hours.Hours, (byte)hour) < 0;
    }

    /// <summary>Temperature of the air, and so of the leaves, in a dark hour [°C].</summary>
    public static float Temperature(SeasonRecording recording, int day, int hour) =>
        (float)recording.WeatherOf(day).Hours[hour].AirTemperatureCelsius;

    /// <summary>Net assimilation of every leaf in a dark hour [µmol m⁻² s⁻¹]: none is above 0.</summary>
    public static float[] Assimilation(SeasonRecording recording, int day, int hour)
    {
        var (leaves, hours, weather) = (recording.Leaves(day), recording.Hours(day), recording.WeatherOf(day));
        var rates = Enumerable.Range(0, weather.Hours.Count).Where(of => Array.IndexOf(hours.Hours, (byte)of) < 0)
            .ToDictionary(of => of, of =>
                LeafRespiration.At(weather.Hours[of].AirTemperatureCelsius, recording.Scenario.Leaf));
        var share = rates[hour] / rates.Values.Sum();
        var values = new float[leaves.Count];
        for (var leaf = 0; leaf < values.Length; leaf++)
        {
            var lit = 0.0;
            for (var of = 0; of < hours.Count; of++) lit += hours.NetAssimilation[hours.IndexOf(of, leaf)];
            var all = leaves.NetAssimilationGrams[leaf] / (leaves.Area[leaf] * GramsPerMicromoleHour);
            values[leaf] = (float)Math.Min(0, (all - lit) * share);
        }

        return values;
    }
}
