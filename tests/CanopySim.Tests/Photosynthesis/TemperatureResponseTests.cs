using CanopySim.Photosynthesis;
using Xunit;
using static CanopySim.Photosynthesis.PhotosynthesisConstants;

namespace CanopySim.Tests.Photosynthesis;

public class TemperatureResponseTests
{
    /// <summary>
    /// temperature_functions.csv: computed independently from the constants of Bernacchi et al. 2001 (tabulated
    /// form), Medlyn et al. 2002 and Kattge &amp; Knorr 2007; six printed decimals.
    /// </summary>
    [Fact]
    public void ResponsesMeetTheTableFrom0To50Degrees()
    {
        var table = ReferenceTable.Read("temperature_functions.csv");
        Assert.Equal(11, table.Count);
        for (var row = 0; row < table.Count; row++)
        {
            var t = table.Number(row, "T_C");
            Meets(table, row, "GammaStar", FarquharModel.Co2CompensationPointAt(t));
            Meets(table, row, "Kc", MichaelisCo2At25 * TemperatureResponse.Arrhenius(t, MichaelisCo2Activation));
            Meets(table, row, "Ko", MichaelisOxygenAt25 * TemperatureResponse.Arrhenius(t, MichaelisOxygenActivation));
            Meets(table, row, "Kc(1+O/Ko) O=210", FarquharModel.MichaelisAt(t));
            Meets(table, row, "Vc_arr65330", TemperatureResponse.Arrhenius(t, VcmaxActivation));
            Meets(table, row, "Jm_arr43540", TemperatureResponse.Arrhenius(t, JmaxActivation));
            Meets(table, row, "Rd_arr46390", LeafRespiration.At(t, new LeafParameters { DayRespiration25 = 1 }));
            foreach (var growth in new[] { 20, 30 })
            {
                Meets(table, row, $"Vc_peak_KK07_Tg{growth}", PeakedVcmax(t, growth));
                Meets(table, row, $"Jm_peak_KK07_Tg{growth}", PeakedJmax(t, growth));
            }
        }
    }

    /// <summary>
    /// Optima by growth temperature, computed independently from Kattge &amp; Knorr 2007: two printed decimals.
    /// </summary>
    [Theory]
    [InlineData(20, 33.66, 32.73)]
    [InlineData(25, 36.20, 34.49)]
    [InlineData(30, 38.78, 36.28)]
    public void OptimaFollowGrowthTemperature(double growth, double vcmax, double jmax)
    {
        Assert.Equal(vcmax, TemperatureResponse.Optimum(PeakedVcmaxActivation, TemperatureResponse.VcmaxEntropy(growth)), 0.0051);
        Assert.Equal(jmax, TemperatureResponse.Optimum(PeakedJmaxActivation, TemperatureResponse.JmaxEntropy(growth)), 0.0051);
        Assert.True(PeakedVcmax(vcmax, growth) > PeakedVcmax(vcmax - 0.5, growth));
        Assert.True(PeakedVcmax(vcmax, growth) > PeakedVcmax(vcmax + 0.5, growth));
    }

    [Fact]
    public void HeatClosureIsSmoothAndComplete()
    {
        Assert.Equal(1, HeatClosure.At(40, 40, 46));
        Assert.Equal(0.5, HeatClosure.At(43, 40, 46), 1e-12);
        Assert.Equal(0, HeatClosure.At(46, 40, 46));
        for (var t = 39.0; t < 47; t += 0.1) Assert.True(HeatClosure.At(t + 0.1, 40, 46) <= HeatClosure.At(t, 40, 46));
    }

    private static double PeakedVcmax(double t, double growth) =>
        TemperatureResponse.PeakedArrhenius(t, PeakedVcmaxActivation, TemperatureResponse.VcmaxEntropy(growth));

    private static double PeakedJmax(double t, double growth) =>
        TemperatureResponse.PeakedArrhenius(t, PeakedJmaxActivation, TemperatureResponse.JmaxEntropy(growth));

    private static void Meets(ReferenceTable table, int row, string column, double actual) =>
        Assert.True(
            Math.Abs(actual - table.Number(row, column)) <= table.Tolerance(row, column),
            $"{column}, {table.Text(row, "T_C")} degC: {actual}, table {table.Text(row, column)}");
}
