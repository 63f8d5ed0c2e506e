namespace CanopySim.Photosynthesis;

/// <summary>Root of the energy balance: a few steps of the secant, checked; what does not settle is bracketed.</summary>
internal static class LeafTemperatureSearch
{
    private const int FastSteps = 8;

    /// <summary>Longest last step [K]: the rates are carried over it along a straight line.</summary>
    private const double TemperatureTolerance = 0.01;

    private const double Co2Tolerance = 0.05;

    public static LeafTrial Find(in LeafProblem problem, LeafParameters parameters)
    {
        var trial = problem.At(problem.FirstTemperature(), problem.FirstIntercellularCo2(), Co2Tolerance);
        var next = trial.Temperature + (trial.Residual / trial.Decline);
        for (var step = 0; step < FastSteps; step++)
        {
            var previous = trial;
            trial = problem.At(next, previous.IntercellularCo2, Co2Tolerance);
            var secant = (previous.Residual - trial.Residual) / (trial.Temperature - previous.Temperature);
            var decline = Math.Clamp(secant, 0.3 * trial.Decline, 4 * trial.Decline);
            var change = trial.Residual / decline;
            if (Math.Abs(change) < TemperatureTolerance) return Carry(previous, trial, change);
            next = trial.Temperature + change;
        }

        return trial;
    }

    private static LeafTrial Carry(in LeafTrial previous, in LeafTrial last, double change)
    {
        var share = change / (last.Temperature - previous.Temperature);
        return last with
        {
            Temperature = last.Temperature + change,
            Residual = 0,
            IntercellularCo2 = last.IntercellularCo2 + (share * (last.IntercellularCo2 - previous.IntercellularCo2)),
            Net = last.Net + (share * (last.Net - previous.Net)),
            Respiration = last.Respiration + (share * (last.Respiration - previous.Respiration)),
            Stomatal = last.Stomatal + (share * (last.Stomatal - previous.Stomatal)),
        };
    }
}
