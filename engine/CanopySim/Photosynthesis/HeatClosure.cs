namespace CanopySim.Photosynthesis;

/// <summary>
/// Share of assimilation that heat leaves: 1 below a first leaf temperature, 0 above a second, 1 − x² (3 − 2x)
/// between. Assumed: at 45 °C vine leaves assimilate next to nothing, while the peaked responses alone leave 0.18,
/// 0.28 and 0.41 of the best gross rate there (growth at 25, 30 and 35 °C, Ci 280 µmol mol⁻¹). It multiplies both
/// limiting rates; conductance follows assimilation down to its floor.
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
