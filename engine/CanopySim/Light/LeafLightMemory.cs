namespace CanopySim.Light;

/// <summary>Leaves remember the light they live in: PAR absorbed per area over what a blade lying over the canopy would absorb, smoothed over a week.</summary>
public static class LeafLightMemory
{
    private const double SmoothingDays = 7;

    /// <summary>Adds a day to every blade's memory.</summary>
    public static void Remember(LightOfDay light, Optics optics)
    {
        var absorptance = 1 - optics.LeafParReflectance - optics.LeafParTransmittance;
        var open = light.IncidentParMoles * absorptance;
        if (open <= 0) return;
        for (var surface = 0; surface < light.Canopy.Leaves.Count; surface++)
        {
            if (light.Canopy.Leaves[surface] is not { } leaf || light.Canopy.Areas[surface] <= 0) continue;
            var wattHours = 0.0;
            for (var hour = 0; hour < light.Solution.HourCount; hour++)
                wattHours += light.Solution.AbsorbedPar[light.Solution.IndexOf(hour, surface)];
            var today = IncidentPar.MolesFromWattHours(wattHours) / light.Canopy.Areas[surface] / open;
            leaf.RelativeLight = leaf.RelativeLight is { } before ? before + ((today - before) / SmoothingDays) : today;
        }
    }
}
