using CanopySim.Photosynthesis;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Photosynthesis;

public class LeafEnergyBalanceTests
{
    /// <summary>
    /// leaf_energy_balance.csv: computed independently, root of the balance with exact longwave, hypostomatous leaf,
    /// half sky (Brutsaert 1975) and half surroundings at air temperature, emissivity 0.97, boundary layer after
    /// Campbell &amp; Norman 1998. It takes saturation from Buck 1981; the engine takes FAO-56, so temperatures are
    /// met within 0.05 K.
    /// </summary>
    [Fact]
    public void EveryRowOfTheTableIsMet()
    {
        var table = ReferenceTable.Read("leaf_energy_balance.csv");
        Assert.Equal(141, table.Count);
        var worst = 0.0;
        for (var row = 0; row < table.Count; row++)
        {
            double N(string column) => table.Number(row, column);
            var boundary = LeafBoundaryLayer.At(N("u_ms"), N("d_m") / 0.72);
            Assert.Equal(N("gHa_oneside"), boundary.Heat, 1e-5);
            Assert.Equal(N("gva"), boundary.Vapor, 1e-5);
            var vapor = LeafEnergyBalance.VaporConductance(N("gs_mol"), boundary.Vapor);
            Assert.Equal(N("gv"), vapor, 1e-5);

            var air = N("Ta_C");
            var vaporPressure = N("RH") * SaturationVaporPressure.At(air);
            Assert.Equal(N("L_sky_Wm2"), LeafEnergyBalance.SkyLongwave(air, vaporPressure), 0.0005 * N("L_sky_Wm2"));
            var heat = new LeafHeat(
                N("Rabs_solar_Wm2") + LeafEnergyBalance.AbsorbedLongwave(air, vaporPressure, 0.97),
                0.97,
                boundary.Heat,
                air,
                vaporPressure,
                N("pa_kPa"));
            var leaf = LeafEnergyBalance.LeafTemperature(heat, vapor, air);
            worst = Math.Max(worst, Math.Abs(leaf - N("Tleaf_exact_C")));
            Assert.Equal(N("Tleaf_exact_C"), leaf, 0.05);
            var transpiration = 1000 * vapor * (SaturationVaporPressure.At(leaf) - vaporPressure) / N("pa_kPa");
            Assert.Equal(N("E_mmol_m2s"), transpiration, 0.01 + (0.005 * N("E_mmol_m2s")));
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"Worst leaf temperature: {worst:g3} K");
    }

    [Fact]
    public void BoundaryLayerOfTheTextbook()
    {
        // Campbell & Norman 1998 form, recomputed: wind 2 m/s and d 0.04 m give 1.3364 mol m-2 s-1 a side.
        Assert.Equal(1.3364, LeafBoundaryLayer.At(2, 0.04 / 0.72).Heat, 5e-5);
        Assert.Equal(LeafBoundaryLayer.At(LeafBoundaryLayer.WindFloor, 0.1), LeafBoundaryLayer.At(0, 0.1));
    }
}
