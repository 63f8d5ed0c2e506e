using CanopySim.Files.Recording;

namespace CanopySim.Drawing.Leaves;

/// <summary>
/// How far fruit has colored and shoots have browned, for pictures alone: the results hold no such quantity.
/// </summary>
public static class Ripeness
{
    // From veraison berries color within two weeks or so: common practice, no source.
    private const double DaysToColor = 14;

    /// <summary>0 green, 1 colored.</summary>
    public static float Of(SeasonRecording recording, int day)
    {
        for (var of = day; of >= 0 && day - of <= DaysToColor; of--)
            if (recording.Row(of).Stage is not ("veraison" or "ripe")) return (float)Math.Clamp((day - of)
                / DaysToColor, 0, 1);
        return recording.Row(day).Stage is "veraison" or "ripe" ? 1 : 0;
    }
}
