namespace CanopySim.Photosynthesis;

/// <summary>
/// What blades did in each hour with light, for whoever asks; arrays are indexed [hour × blades + blade], blades in the order of
/// <see cref="CanopyGasExchange.Day"/>, and serve from day to day.
/// </summary>
public sealed class LeafHours
{
    /// <summary>Net assimilation [µmol m⁻² s⁻¹].</summary>
    public float[] NetAssimilation { get; private set; } = [];

    /// <summary>Temperature of the blade, of its sunlit and shaded part by their shares [°C].</summary>
    public float[] Temperature { get; private set; } = [];

    internal void Fit(int count)
    {
        if (NetAssimilation.Length >= count) return;
        (NetAssimilation, Temperature) = (new float[count], new float[count]);
    }
}
