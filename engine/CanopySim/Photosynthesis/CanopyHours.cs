using CanopySim.Light;
using CanopySim.Plants;

namespace CanopySim.Photosynthesis;

/// <summary>A blade with what does not change through a day.</summary>
/// <param name="Leaf">The leaf.</param>
/// <param name="Surface">Its surface in the scene.</param>
/// <param name="Area">One-sided area [m²].</param>
/// <param name="LitArea">Area over which its light is spread [m²].</param>
/// <param name="Efficiency">Efficiency of its age [0 to 1].</param>
/// <param name="CapacityFactor">Multiplies Vcmax and Jmax.</param>
/// <param name="RespirationFactor">Multiplies day respiration.</param>
/// <param name="Width">Width [m].</param>
internal readonly record struct CanopyBlade(
    Leaf Leaf, int Surface, double Area, double LitArea, double Efficiency, double CapacityFactor, double RespirationFactor, double Width);

/// <summary>
/// All blades in hours with light, all of them or those of a list. The sunlit and the shaded parts of a run of blades in one hour are one batch; runs are of
/// one length whatever the number of threads, and no leaf's answer hangs on its batch.
/// </summary>
internal sealed class CanopyHours(
    LightOfDay light, Optics optics, CanopyBlade[] blades, double stomatalWater, int[] hours, LeafBatch[] batches, LeafHours? keep)
{
    // Long enough for the second tier to fill its blocks, short enough to share an hour among threads.
    private const int BladesInRun = 512;

    private readonly double[] _netAssimilation = new double[batches.Length * blades.Length];
    private readonly double[] _transpiration = new double[batches.Length * blades.Length];

    /// <summary>Hours that are solved.</summary>
    public int Count => batches.Length;

    /// <summary>Net assimilation of a blade in a solved hour [µmol m⁻² s⁻¹].</summary>
    public double NetAssimilation(int hour, int blade) => _netAssimilation[(hour * blades.Length) + blade];

    /// <summary>Transpiration of a blade in a solved hour [mmol m⁻² s⁻¹]; negative: dew.</summary>
    public double Transpiration(int hour, int blade) => _transpiration[(hour * blades.Length) + blade];

    public void Solve(int threads)
    {
        keep?.Fit(batches.Length * blades.Length);
        var runs = (blades.Length + BladesInRun - 1) / BladesInRun;
        Workers.Run(threads, batches.Length * runs, () => new Run(), (run, item) => Solve(run, item / runs, item % runs * BladesInRun));
    }

    // The shaded part of each blade, then the sunlit parts of those that have one.
    private void Solve(Run run, int hour, int first)
    {
        var count = Math.Min(BladesInRun, blades.Length - first);
        var parts = 0;
        for (var i = 0; i < count; i++)
        {
            ref readonly var blade = ref blades[first + i];
            var of = LeafParts.Of(light, hours[hour], blade.Surface, blade.LitArea, optics);
            run.SunlitShare[i] = of.SunlitShare;
            run.States[i] = StateOf(blade, of.ShadedPpfd, of.ShadedNir);
            if (of.SunlitShare > 0) run.States[count + parts++] = StateOf(blade, of.SunlitPpfd, of.SunlitNir);
        }

        parts += count;
        batches[hour].Solve(run.States.AsSpan(0, parts), run.Results.AsSpan(0, parts), run.Scratch);
        var at = (hour * blades.Length) + first;
        var next = count;
        for (var i = 0; i < count; i++)
        {
            ref readonly var shaded = ref run.Results[i];
            var (assimilation, transpiration, temperature) = (shaded.NetAssimilation, shaded.Transpiration, shaded.LeafTemperatureCelsius);
            if (run.SunlitShare[i] > 0)
            {
                ref readonly var sunlit = ref run.Results[next++];
                assimilation += run.SunlitShare[i] * (sunlit.NetAssimilation - shaded.NetAssimilation);
                transpiration += run.SunlitShare[i] * (sunlit.Transpiration - shaded.Transpiration);
                temperature += run.SunlitShare[i] * (sunlit.LeafTemperatureCelsius - shaded.LeafTemperatureCelsius);
            }

            _netAssimilation[at + i] = assimilation;
            _transpiration[at + i] = transpiration;
            if (keep is null) continue;
            keep.NetAssimilation[at + i] = (float)assimilation;
            keep.Temperature[at + i] = (float)temperature;
        }
    }

    private LeafState StateOf(in CanopyBlade blade, double ppfd, double nir) =>
        new(ppfd, nir, blade.CapacityFactor, blade.RespirationFactor, blade.Width, stomatalWater);

    private sealed class Run
    {
        public readonly double[] SunlitShare = new double[BladesInRun];
        public readonly LeafState[] States = new LeafState[2 * BladesInRun];
        public readonly LeafGasExchange[] Results = new LeafGasExchange[2 * BladesInRun];
        public readonly LeafBatchScratch Scratch = new();
    }
}
