namespace CanopySim.Growth;

/// <summary>
/// Course of an organ's expansion over its thermal duration: the smooth step 3 u² − 2 u³, slow at both ends, fastest in the
/// middle. The shape is assumed; the durations have their sources in <see cref="GrowthParameters"/>.
/// </summary>
public static class ExpansionCourse
{
    /// <summary>Share of the final size reached [0 to 1] at a thermal age [°C d] of an organ that expands over a duration [°C d].</summary>
    public static double Share(double thermalAge, double duration)
    {
        var u = Math.Clamp(thermalAge / duration, 0, 1);
        return u * u * (3 - (2 * u));
    }

    /// <summary>Share of the final size that is added between two thermal ages.</summary>
    public static double Increment(double fromThermalAge, double toThermalAge, double duration) =>
        Share(toThermalAge, duration) - Share(fromThermalAge, duration);
}
