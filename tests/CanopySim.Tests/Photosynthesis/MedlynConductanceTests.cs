using CanopySim.Photosynthesis;
using Xunit;
using static CanopySim.Photosynthesis.PhotosynthesisConstants;

namespace CanopySim.Tests.Photosynthesis;

public class MedlynConductanceTests
{
    /// <summary>
    /// medlyn_coupled.csv: computed independently from Medlyn et al. 2011 with g0 = 0 (closed-form Ci / Ca) and the
    /// leaf of fvcb_grid.csv with Vcmax 80, Jmax 140, Rd 1.0, peaked responses of Kattge &amp; Knorr 2007 at Tg 20,
    /// no limit by triose phosphates; five printed decimals.
    /// </summary>
    [Fact]
    public void EveryRowOfTheCoupledTableIsMet()
    {
        var table = ReferenceTable.Read("medlyn_coupled.csv");
        Assert.Equal(73, table.Count);
        for (var row = 0; row < table.Count; row++)
        {
            double N(string column) => table.Number(row, column);
            void Meets(string column, double actual) => Assert.True(
                Math.Abs(actual - N(column)) <= table.Tolerance(row, column),
                $"row {row + 2}, {column}: {actual}, table {table.Text(row, column)}");

            var t = N("T_C");
            var share = MedlynConductance.IntercellularShare(N("VPD_kPa"), N("g1_kPa05"));
            Meets("Ci/Ca", share);
            var ci = share * N("Ca");
            Meets("Ci", ci);
            var vcmax = 80 * TemperatureResponse.PeakedArrhenius(t, PeakedVcmaxActivation, TemperatureResponse.VcmaxEntropy(20));
            var jmax = 140 * TemperatureResponse.PeakedArrhenius(t, PeakedJmaxActivation, TemperatureResponse.JmaxEntropy(20));
            var transport = FarquharModel.ElectronTransport(FarquharModel.UsefulLight(N("PPFD") * 0.85), jmax, 0.7);
            var net = FarquharModel.GrossAssimilation(
                ci, vcmax, transport, FarquharModel.Co2CompensationPointAt(t), FarquharModel.MichaelisAt(t))
                - TemperatureResponse.Arrhenius(t, DayRespirationActivation);
            Meets("A", net);
            Meets("gs_H2O", MedlynConductance.AtSurface(net, N("Ca"), N("VPD_kPa"), 0, N("g1_kPa05")));
        }
    }

    /// <summary>
    /// The closed form behind the boundary layer, against the formula with the deficit that it leaves at the surface.
    /// </summary>
    [Theory]
    [InlineData(0.00, 2.0, 0.5, 0.01)]
    [InlineData(0.05, 0.3, 0.1, 0.001)]
    [InlineData(0.06, 4.0, 0.6, 0.01)]
    [InlineData(0.20, 15.0, 0.15, 0.05)]
    public void SurfaceHumidityIsConsistent(double demand, double slopeTerm, double boundary, double floor)
    {
        var stomatal = MedlynConductance.BehindBoundaryLayer(demand, slopeTerm, boundary, floor, out var derivative);
        var atSurface = slopeTerm * Math.Sqrt((boundary + stomatal) / boundary);
        Assert.Equal(floor + (demand * (1 + atSurface)), stomatal, 1e-12);

        var step = 1e-6;
        var later = MedlynConductance.BehindBoundaryLayer(demand + step, slopeTerm, boundary, floor, out _);
        Assert.Equal((later - stomatal) / step, derivative, 1e-4 * derivative);
    }

    [Fact]
    public void NoAssimilationLeavesTheFloor()
    {
        Assert.Equal(0.01, MedlynConductance.AtSurface(-1, 400, 1, 0.01, 4));
        Assert.Equal(0.01, MedlynConductance.BehindBoundaryLayer(0, 4, 0.5, 0.01, out _), 1e-15);
    }
}
