using CanopySim.Weather;

namespace CanopySim.Photosynthesis;

/// <summary>
/// One leaf in one hour with everything that its temperature does not change; <see cref="At"/> tries a temperature.
/// </summary>
internal readonly struct LeafProblem
{
    /// <summary>
    /// A step too far may ask for more CO₂ than comes through still air: the surface keeps this share of the air's.
    /// </summary>
    internal const double LeastSurfaceShare = 0.02;

    private const int CarbonSteps = 40;

    private readonly LeafKinetics _kinetics;
    private readonly LeafBoundaryLayer _boundary;
    private readonly double _boundaryResistance;
    private readonly double _usefulLight;
    private readonly double _capacity;
    private readonly double _respiration;
    private readonly double _slope;
    private readonly double _floor;
    private readonly double _co2;
    private readonly double _curvature;

    public LeafProblem(
        in LeafEnvironment environment,
        in LeafState leaf,
        LeafParameters parameters,
        in LeafKinetics kinetics,
        double absorbedLongwave,
        double windSpeed)
    {
        _kinetics = kinetics;
        _boundary = LeafBoundaryLayer.At(windSpeed, leaf.Width);
        _boundaryResistance = 1 / _boundary.Co2;
        _usefulLight = FarquharModel.UsefulLight(leaf.AbsorbedPpfd);
        _capacity = leaf.CapacityFactor;
        _respiration = leaf.RespirationFactor;
        _slope = parameters.StomatalSlope * leaf.WaterStressFactor;
        _floor = parameters.StomatalFloor;
        _co2 = environment.Co2;
        _curvature = parameters.ElectronTransportCurvature;
        Heat = new(
            leaf.AbsorbedShortwave + absorbedLongwave,
            parameters.Emissivity,
            _boundary.Heat,
            environment.AirTemperatureCelsius,
            environment.VaporPressure,
            environment.AirPressure);
        Vcmax25 = parameters.Vcmax25 * leaf.CapacityFactor;
    }

    /// <summary>The energy balance of this leaf.</summary>
    public LeafHeat Heat { get; }

    /// <summary>Floor of stomatal conductance [mol m⁻² s⁻¹].</summary>
    public double Floor => _floor;

    /// <summary>Boundary-layer conductance to water vapor, which no stomata exceed [mol m⁻² s⁻¹].</summary>
    public double BoundaryVaporConductance => _boundary.Vapor;

    /// <summary>Vcmax of this leaf at 25 °C [µmol m⁻² s⁻¹].</summary>
    public double Vcmax25 { get; }

    /// <summary>
    /// Leaf temperature [°C] of a Penman-Monteith step from the air's, with a conductance guessed from light and
    /// capacity: only where the search begins, so its numbers need no source.
    /// </summary>
    public double FirstTemperature()
    {
        var air = Heat.AirTemperatureCelsius;
        var saturation = SaturationVaporPressure.At(air);
        var slopeTerm = MedlynConductance.SlopeTerm(saturation - Heat.VaporPressure, _slope);
        var assimilation = 0.3 * Vcmax25 * _usefulLight / (_usefulLight + (0.6 * Vcmax25) + 1);
        var stomatal = _floor + (MedlynConductance.VaporPerCo2 * (1 + slopeTerm) * assimilation / _co2);
        var vapor = VaporConductance(stomatal);
        var residual = LeafEnergyBalance.Residual(Heat, air, saturation, vapor, out var decline);
        return air + (residual / decline);
    }

    /// <summary>
    /// CO₂ between the cells [µmol mol⁻¹] to begin with: that of g0 = 0, left of the solution for most leaves.
    /// </summary>
    public double FirstIntercellularCo2()
    {
        var deficit = SaturationVaporPressure.At(Heat.AirTemperatureCelsius) - Heat.VaporPressure;
        return _co2 * MedlynConductance.IntercellularShare(deficit, _slope);
    }

    /// <summary>
    /// Gas exchange and energy balance at a leaf temperature [°C]. CO₂ between the cells is the root of h(Ci) = Ci −
    /// Ca + A / gbc + 1.6 A / gs, which rises and is concave: Newton from the left climbs to the root without passing
    /// it, from the right it lands on the left.
    /// </summary>
    public LeafTrial At(double temperatureCelsius, double firstIntercellularCo2, double co2Tolerance)
    {
        var rates = _kinetics.At(temperatureCelsius);
        var saturation = SaturationVaporPressure.At(temperatureCelsius);
        var slopeTerm = MedlynConductance.SlopeTerm(saturation - Heat.VaporPressure, _slope);
        var vcmax = rates.Vcmax * _capacity;
        var quarterTransport = rates.HeatClosure / 4
            * FarquharModel.ElectronTransport(_usefulLight, rates.Jmax * _capacity, _curvature);
        var respiration = rates.DayRespiration * _respiration;

        var ci = firstIntercellularCo2;
        double net = 0, stomatal = 0;
        for (var step = 0; step < CarbonSteps; step++)
        {
            // The smaller of V / (Ci + K) of the two processes, compared across so that one division is enough.
            var rubiscoCurb = ci + rates.Michaelis;
            var transportCurb = ci + (2 * rates.CompensationPoint);
            var rubisco = vcmax * transportCurb < quarterTransport * rubiscoCurb;
            var inverseCurb = 1 / (rubisco ? rubiscoCurb : transportCurb);
            var perCo2 = (rubisco ? vcmax : quarterTransport) * inverseCurb;
            var overCompensation = ci - rates.CompensationPoint;
            net = (perCo2 * overCompensation) - respiration;
            var netByCi = perCo2 * (1 - (overCompensation * inverseCurb));

            stomatal = StomatalConductance(net, slopeTerm, out var stomatalByNet);
            var resistance = MedlynConductance.VaporPerCo2 / stomatal;
            var excess = ci - _co2 + (net * (_boundaryResistance + resistance));
            var supplyByNet = _boundaryResistance
                + (resistance * (1 - (net * stomatalByNet * resistance * (1 / MedlynConductance.VaporPerCo2))));
            var change = -excess / (1 + (netByCi * supplyByNet));
            if (Math.Abs(change) < co2Tolerance)
            {
                // The last step is so short that the tangent carries the rates along.
                ci += change;
                net += netByCi * change;
                stomatal += stomatalByNet * netByCi * change;
                break;
            }

            ci = Math.Max(ci + change, 0.1 * ci);
        }

        var vapor = VaporConductance(stomatal);
        var residual = LeafEnergyBalance.Residual(Heat, temperatureCelsius, saturation, vapor, out var decline);
        return new(temperatureCelsius, residual, decline, ci, net, respiration, stomatal);
    }

    /// <summary>Conductance of stomata and boundary layer to vapor [mol m⁻² s⁻¹].</summary>
    public double VaporConductance(double stomatal) => LeafEnergyBalance.VaporConductance(stomatal, _boundary.Vapor);

    /// <summary>Transpiration [mmol m⁻² s⁻¹].</summary>
    public double Transpiration(double temperatureCelsius, double stomatal) =>
        1000 * VaporConductance(stomatal)
        * (SaturationVaporPressure.At(temperatureCelsius) - Heat.VaporPressure) / Heat.AirPressure;

    private double StomatalConductance(double net, double slopeTerm, out double byNet)
    {
        if (net <= 0)
        {
            byNet = 0;
            return _floor;
        }

        var inverseSurface = 1 / Math.Max(_co2 - (net * _boundaryResistance), LeastSurfaceShare * _co2);
        var demand = MedlynConductance.VaporPerCo2 * net * inverseSurface;
        var stomatal = MedlynConductance.BehindBoundaryLayer(demand, slopeTerm, _boundary.Vapor, _floor, out var byDemand);
        byNet = byDemand * MedlynConductance.VaporPerCo2 * _co2 * inverseSurface * inverseSurface;
        return stomatal;
    }
}

/// <summary>A leaf at a temperature that was tried.</summary>
/// <param name="Temperature">Leaf temperature [°C].</param>
/// <param name="Residual">Rest of the energy balance [W m⁻²]; positive: the leaf is too cold.</param>
/// <param name="Decline">Fall of the rest per kelvin at fixed conductances [W m⁻² K⁻¹].</param>
/// <param name="IntercellularCo2">Ci [µmol mol⁻¹].</param>
/// <param name="Net">Net assimilation [µmol m⁻² s⁻¹].</param>
/// <param name="Respiration">Day respiration [µmol m⁻² s⁻¹].</param>
/// <param name="Stomatal">Stomatal conductance to water vapor [mol m⁻² s⁻¹].</param>
internal readonly record struct LeafTrial(
    double Temperature,
    double Residual,
    double Decline,
    double IntercellularCo2,
    double Net,
    double Respiration,
    double Stomatal);
