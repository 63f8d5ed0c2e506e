using CanopySim.Photosynthesis;
using Xunit;
using static CanopySim.Photosynthesis.PhotosynthesisConstants;

namespace CanopySim.Tests.Photosynthesis;

public class FarquharModelTests
{
    private const double Curvature = 0.7;

    // The grid gives incident light; a leaf state holds what is absorbed.
    private const double GridAbsorptance = 0.85;

    /// <summary>
    /// fvcb_grid.csv: computed independently from Farquhar, von Caemmerer &amp; Berry 1980 with the constants of
    /// Bernacchi et al. 2001, three leaves (two with the peaked responses of Kattge &amp; Knorr 2007, Tg 20), 10 to
    /// 45 °C, light 0 to 1800, Ci 50 to 800; five printed decimals. Below the compensation point the grid takes the
    /// smaller net rate; there this model takes the slower carboxylation, which is the larger (less negative) of the
    /// grid's two columns.
    /// </summary>
    [Fact]
    public void EveryRowOfTheGridIsMet()
    {
        var table = ReferenceTable.Read("fvcb_grid.csv");
        Assert.Equal(826, table.Count);
        var below = 0;
        for (var row = 0; row < table.Count; row++)
        {
            double N(string column) => table.Number(row, column);
            var (t, ci) = (N("Tleaf_C"), N("Ci_umolmol"));
            var peaked = !table.Text(row, "set").Contains("arrhenius", StringComparison.Ordinal);
            var vcmax = N("Vcmax25") * (peaked
                ? TemperatureResponse.PeakedArrhenius(t, PeakedVcmaxActivation, TemperatureResponse.VcmaxEntropy(20))
                : TemperatureResponse.Arrhenius(t, VcmaxActivation));
            var jmax = N("Jmax25") * (peaked
                ? TemperatureResponse.PeakedArrhenius(t, PeakedJmaxActivation, TemperatureResponse.JmaxEntropy(20))
                : TemperatureResponse.Arrhenius(t, JmaxActivation));
            var phosphate = N("TPU25") * TemperatureResponse.Arrhenius(t, TriosePhosphateActivation);
            var respiration = N("Rd25") * TemperatureResponse.Arrhenius(t, DayRespirationActivation);
            var transport = FarquharModel.ElectronTransport(
                FarquharModel.UsefulLight(N("PPFD_umol") * GridAbsorptance), jmax, Curvature);
            var compensation = FarquharModel.Co2CompensationPointAt(t);
            var michaelis = FarquharModel.MichaelisAt(t);
            Meets(table, row, "Vcmax", vcmax);
            Meets(table, row, "Jmax", jmax);
            Meets(table, row, "J", transport);
            Meets(table, row, "Rd", respiration);
            Meets(table, row, "Ac_gross", FarquharModel.RubiscoLimited(ci, vcmax, compensation, michaelis));
            Meets(table, row, "Aj_gross", FarquharModel.ElectronTransportLimited(ci, transport, compensation));
            Meets(table, row, "Ap_gross", 3 * phosphate);

            var net = FarquharModel.GrossAssimilation(ci, vcmax, transport, compensation, michaelis, phosphate) - respiration;
            if (ci >= compensation)
            {
                Meets(table, row, "A_net", net);
            }
            else
            {
                below++;
                Assert.Equal(Math.Max(N("Ac_gross"), N("Aj_gross")) - N("Rd"), net, 2e-5);
            }
        }

        Assert.Equal(59, below);
    }

    [Theory]
    [InlineData(1e-9, 100)]
    [InlineData(100, 1e-9)]
    [InlineData(700, 200)]
    public void ElectronTransportSolvesItsQuadratic(double light, double jmax)
    {
        var j = FarquharModel.ElectronTransport(light, jmax, Curvature);
        var rest = (Curvature * j * j) - ((light + jmax) * j) + (light * jmax);
        Assert.Equal(0, rest / (light * jmax), 1e-12);
        Assert.True(j <= Math.Min(light, jmax));
    }

    [Fact]
    public void BelowTheCompensationPointTheSlowerCarboxylationStillLimits()
    {
        // A dark leaf has no electron transport: no carboxylation, and so no release of CO2 by photorespiration.
        Assert.Equal(0, FarquharModel.GrossAssimilation(20, 80, 0, 42.75, 710));
        Assert.True(FarquharModel.GrossAssimilation(20, 80, 100, 42.75, 710) < 0);
    }

    private static void Meets(ReferenceTable table, int row, string column, double actual) =>
        Assert.True(
            Math.Abs(actual - table.Number(row, column)) <= table.Tolerance(row, column),
            $"row {row + 2}, {column}: {actual}, table {table.Text(row, column)}");
}
