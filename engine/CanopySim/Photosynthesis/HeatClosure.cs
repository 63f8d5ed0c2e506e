namespace CanopySim.Photosynthesis;

/// <summary>
/// Share of assimilation that heat leaves: 1 below a first leaf temperature, 0 above a second, 1 − x² (3 − 2x) between. Assumed: the peaked
/// responses of Vcmax and Jmax of warm-grown leaves alone leave a third of the best rate at 45 °C, where vine leaves assimilate next to
/// nothing. It multiplies both limiting rates; conductance follows assimilation down to its floor.
/// </summary>
public static class HeatClosure
{
    public static double At(double leafTemperatureCelsius, double start, double end)
    {
        if (leafTemperatureCelsius <= start) return 1;
        if (leafTemperatureCelsius >= end) return 0;
        var x = (leafTemperatureCelsius - start) / (end - start);
        return 1 - (x * x * (3 - (2 * x)));
    }
}
