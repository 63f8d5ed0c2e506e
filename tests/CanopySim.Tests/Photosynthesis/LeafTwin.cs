using CanopySim.Photosynthesis;
using CanopySim.Weather;

namespace CanopySim.Tests.Photosynthesis;

/// <summary>
/// The leaf solved the slow way, from the published forms of each model: CO₂ between the cells by bisection inside,
/// leaf temperature by a scan for every change of sign outside, then bisection. The rule where the balance has three
/// roots: the coolest.
/// </summary>
internal sealed class LeafTwin(LeafEnvironment environment, LeafState leaf, LeafParameters parameters)
{
    private readonly LeafBoundaryLayer _boundary = LeafBoundaryLayer.At(environment.WindSpeed, leaf.Width);

    public List<double> Roots { get; } = [];

    public LeafGasExchange Solve(double scanStep)
    {
        Roots.Clear();
        var lowest = environment.AirTemperatureCelsius - 30;
        var highest = environment.AirTemperatureCelsius + 60;
        var from = lowest;
        var fromResidual = Residual(from);
        for (var to = lowest + scanStep; to <= highest; to += scanStep)
        {
            var toResidual = Residual(to);
            if (fromResidual > 0 != toResidual > 0) Roots.Add(Bisect(from, to));
            (from, fromResidual) = (to, toResidual);
        }

        return At(Roots[0]);
    }

    public double Residual(double temperature)
    {
        var gas = At(temperature);
        return Balance(temperature, gas.StomatalConductanceToWater);
    }

    public LeafGasExchange At(double temperature)
    {
        var respiration = LeafRespiration.At(temperature, parameters, leaf.RespirationFactor);
        var closure = HeatClosure.At(temperature, parameters.HeatClosureStart, parameters.HeatClosureEnd);
        var vcmax = parameters.Vcmax25 * leaf.CapacityFactor * TemperatureResponse.PeakedArrhenius(
            temperature,
            PhotosynthesisConstants.PeakedVcmaxActivation,
            TemperatureResponse.VcmaxEntropy(parameters.GrowthTemperature));
        var jmax = parameters.Vcmax25 * parameters.JmaxToVcmax * leaf.CapacityFactor * TemperatureResponse.PeakedArrhenius(
            temperature,
            PhotosynthesisConstants.PeakedJmaxActivation,
            TemperatureResponse.JmaxEntropy(parameters.GrowthTemperature));
        var transport = FarquharModel.ElectronTransport(
            FarquharModel.UsefulLight(leaf.AbsorbedPpfd), jmax, parameters.ElectronTransportCurvature);
        var compensation = FarquharModel.Co2CompensationPointAt(temperature);
        var michaelis = FarquharModel.MichaelisAt(temperature);
        var deficit = SaturationVaporPressure.At(temperature) - environment.VaporPressure;

        double Net(double ci) =>
            FarquharModel.GrossAssimilation(ci, vcmax * closure, transport * closure, compensation, michaelis) - respiration;

        double Stomatal(double net)
        {
            var surface = Math.Max(environment.Co2 - (net / _boundary.Co2), 0.02 * environment.Co2);
            return MedlynConductance.BehindBoundaryLayer(
                MedlynConductance.VaporPerCo2 * Math.Max(0, net) / surface,
                MedlynConductance.SlopeTerm(deficit, parameters.StomatalSlope * leaf.WaterStressFactor),
                _boundary.Vapor,
                parameters.StomatalFloor,
                out _);
        }

        double Excess(double ci)
        {
            var net = Net(ci);
            return ci - environment.Co2 + (net / _boundary.Co2) + (MedlynConductance.VaporPerCo2 * net / Stomatal(net));
        }

        var low = 1e-6;
        var high = environment.Co2 + (respiration * ((1 / _boundary.Co2) + (MedlynConductance.VaporPerCo2 / parameters.StomatalFloor))) + 100;
        for (var step = 0; step < 60 && high - low > 1e-9; step++)
        {
            var middle = 0.5 * (low + high);
            if (Excess(middle) < 0) low = middle;
            else high = middle;
        }

        var solved = 0.5 * (low + high);
        var stomatal = Stomatal(Net(solved));
        var transpiration = 1000 * LeafEnergyBalance.VaporConductance(stomatal, _boundary.Vapor) * deficit / environment.AirPressure;
        return new(Net(solved), Net(solved) + respiration, respiration, stomatal, transpiration, temperature, solved);
    }

    private double Balance(double temperature, double stomatal)
    {
        var absorbed = leaf.AbsorbedShortwave + LeafEnergyBalance.AbsorbedLongwave(
            environment.AirTemperatureCelsius, environment.VaporPressure, parameters.Emissivity);
        var kelvin = temperature + 273.15;
        var vapor = stomatal * _boundary.Vapor / (stomatal + _boundary.Vapor);
        return absorbed
            - (2 * parameters.Emissivity * 5.670374419e-8 * Math.Pow(kelvin, 4))
            - (2 * 29.3 * _boundary.Heat * (temperature - environment.AirTemperatureCelsius))
            - (44_000 * vapor * (SaturationVaporPressure.At(temperature) - environment.VaporPressure) / environment.AirPressure);
    }

    private double Bisect(double low, double high)
    {
        var lowPositive = Residual(low) > 0;
        for (var step = 0; step < 60 && high - low > 1e-9; step++)
        {
            var middle = 0.5 * (low + high);
            if (Residual(middle) > 0 == lowPositive) low = middle;
            else high = middle;
        }

        return 0.5 * (low + high);
    }
}
