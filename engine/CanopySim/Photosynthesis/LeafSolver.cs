namespace CanopySim.Photosynthesis;

/// <summary>
/// Gas exchange and temperature of leaves in one hour's air: assimilation, conductance, boundary layer and energy
/// balance together. Made once an hour, asked for every leaf; allocates nothing. <see cref="LeafBatch"/> does the same for
/// many leaves at once, and comes here with the few that do not settle there.
/// </summary>
public readonly struct LeafSolver
{
    private readonly LeafEnvironment _environment;
    private readonly LeafParameters _parameters;
    private readonly LeafKinetics _kinetics;
    private readonly double _absorbedLongwave;
    private readonly double _monotoneBelow;

    public LeafSolver(in LeafEnvironment environment, LeafParameters parameters)
    {
        // Without a floor CO2 between the cells has no bound at night: A = g (Ca - Ci) with A < 0 and g = 0.
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(parameters.StomatalFloor);
        _environment = environment;
        _parameters = parameters;
        _kinetics = new(parameters);
        _monotoneBelow = LeafTemperatureSearch.MonotoneBelow(parameters);
        _absorbedLongwave = LeafEnergyBalance.AbsorbedLongwave(
            environment.AirTemperatureCelsius, environment.VaporPressure, parameters.Emissivity);
    }

    /// <summary>One leaf in one air, for callers that have no hour to share.</summary>
    public static LeafGasExchange Solve(in LeafEnvironment environment, in LeafState leaf, LeafParameters parameters) =>
        new LeafSolver(environment, parameters).Solve(leaf);

    /// <summary>A leaf in the wind of the environment.</summary>
    public LeafGasExchange Solve(in LeafState leaf) => Solve(leaf, _environment.WindSpeed);

    /// <summary>A leaf in a wind of its own [m s⁻¹].</summary>
    public LeafGasExchange Solve(in LeafState leaf, double windSpeed)
    {
        var problem = new LeafProblem(_environment, leaf, _parameters, _kinetics, _absorbedLongwave, windSpeed);
        var solution = LeafTemperatureSearch.Find(problem, _monotoneBelow);

        // The last step runs along a straight line, which may pass the floors by a hair.
        var gross = Math.Max(0, solution.Net + solution.Respiration);
        var stomatal = Math.Max(_parameters.StomatalFloor, solution.Stomatal);
        return new(
            gross - solution.Respiration,
            gross,
            solution.Respiration,
            stomatal,
            problem.Transpiration(solution.Temperature, stomatal),
            solution.Temperature,
            solution.IntercellularCo2);
    }
}
