namespace CanopySim.Photosynthesis;

/// <summary>
/// Leaf temperature at which the energy balance closes: a few steps of the secant, each checked; what does not settle
/// is bracketed. Where the balance has three roots (a leaf that closes because it is hot, and is hot because it is
/// closed) the coolest holds: the leaf of the morning warms into the hour. Only above <see cref="MonotoneBelow"/> can
/// there be more than one, so only warmer solutions are searched again.
/// </summary>
internal static class LeafTemperatureSearch
{
    private const int FastSteps = 9;

    /// <summary>Longest last step [K]: the rates are carried over it along a straight line.</summary>
    private const double LastStep = 0.01;

    /// <summary>Largest product of the last two steps [K²], which the error of that line goes with.</summary>
    private const double LastStepsProduct = 5e-4;

    private const double Co2Tolerance = 0.05;

    /// <summary>
    /// For bracketing [µmol mol⁻¹]: below it the rest of the energy balance would be noisy near its root.
    /// </summary>
    private const double FineCo2Tolerance = 1e-3;

    private const double ScanStep = 0.4;

    private const int ClimbSteps = 12;

    /// <summary>Roots closer than this [K] are one.</summary>
    private const double Resolution = 0.05;

    /// <summary>
    /// Leaf temperature [°C] below which the balance falls with temperature: until Vcmax, Jmax or the heat closure
    /// begin to take conductance away. Measured: with g1 15 kPa^½ and Vcmax 120 the first rise comes 3 K above it.
    /// </summary>
    public static double MonotoneBelow(LeafParameters parameters)
    {
        var vcmax = TemperatureResponse.Optimum(
            PhotosynthesisConstants.PeakedVcmaxActivation, TemperatureResponse.VcmaxEntropy(parameters.GrowthTemperature));
        var jmax = TemperatureResponse.Optimum(
            PhotosynthesisConstants.PeakedJmaxActivation, TemperatureResponse.JmaxEntropy(parameters.GrowthTemperature));
        return Math.Min(parameters.HeatClosureStart, Math.Min(vcmax, jmax));
    }

    public static LeafTrial Find(in LeafProblem problem, double monotoneBelow)
    {
        var trial = problem.At(problem.FirstTemperature(), problem.FirstIntercellularCo2(), Co2Tolerance);
        var next = trial.Temperature + (trial.Residual / trial.Decline);
        for (var step = 0; step < FastSteps; step++)
        {
            var previous = trial;
            trial = problem.At(next, previous.IntercellularCo2, Co2Tolerance);
            var moved = trial.Temperature - previous.Temperature;
            if (moved == 0) return WithCoolest(problem, trial, monotoneBelow);

            // The secant may be flat or backward where conductance collapses: it stays near the slope at fixed conductances.
            var secant = (previous.Residual - trial.Residual) / moved;
            var decline = Math.Clamp(secant, 0.3 * trial.Decline, 4 * trial.Decline);
            var change = trial.Residual / decline;
            if (decline == secant && Math.Abs(change) < LastStep && Math.Abs(change * moved) < LastStepsProduct)
                return WithCoolest(problem, Carry(previous, trial, change), monotoneBelow);
            next = trial.Temperature + change;
        }

        var (low, high) = Limits(problem);
        return Scan(problem, low, high) ?? trial;
    }

    /// <summary>
    /// The coolest root, given one. Above <paramref name="monotoneBelow"/> conductance falls with temperature, so a
    /// blade that kept the conductance of a temperature left of every root would come to rest left of them too:
    /// repeated, this climbs to the coolest root and never past it.
    /// </summary>
    private static LeafTrial WithCoolest(in LeafProblem problem, in LeafTrial found, double monotoneBelow)
    {
        if (found.Temperature <= monotoneBelow) return found;
        var high = found.Temperature - Resolution;
        var temperature = monotoneBelow;
        for (var step = 0; step < ClimbSteps && temperature < high; step++)
        {
            var trial = problem.At(temperature, found.IntercellularCo2, Co2Tolerance);
            if (trial.Residual <= 0) return Scan(problem, Limits(problem).Low, temperature) ?? found;
            temperature = LeafEnergyBalance.LeafTemperature(problem.Heat, problem.VaporConductance(trial.Stomatal), temperature);
        }

        return temperature < high ? Scan(problem, monotoneBelow, high) ?? found : found;
    }

    /// <summary>
    /// Temperatures [°C] between which every root lies: those of a blade with the floor of conductance and of one as
    /// wet as its boundary layer lets it be. Conductance lies between the two, whichever sign the deficit has.
    /// </summary>
    private static (double Low, double High) Limits(in LeafProblem problem)
    {
        var air = problem.Heat.AirTemperatureCelsius;
        var closed = LeafEnergyBalance.LeafTemperature(problem.Heat, problem.VaporConductance(problem.Floor), air);
        var wet = LeafEnergyBalance.LeafTemperature(problem.Heat, problem.BoundaryVaporConductance, air);
        return (Math.Min(closed, wet) - 0.01, Math.Max(closed, wet) + 0.01);
    }

    /// <summary>
    /// The coolest root between two temperatures, the balance being positive at the lower; null where it has none.
    /// Steps up, and looks into every dip between steps with the parabola through three of them.
    /// </summary>
    private static LeafTrial? Scan(in LeafProblem problem, double low, double high)
    {
        var steps = (int)Math.Ceiling((high - low) / ScanStep);
        var from = problem.At(low, problem.FirstIntercellularCo2(), FineCo2Tolerance);
        LeafTrial? before = null;
        for (var step = 1; step <= steps; step++)
        {
            var to = problem.At(low + ((high - low) * step / steps), from.IntercellularCo2, FineCo2Tolerance);
            if (before is { } first && from.Residual < first.Residual && from.Residual < to.Residual)
            {
                var dip = problem.At(Vertex(first, from, to), from.IntercellularCo2, FineCo2Tolerance);
                if (dip.Residual <= 0) return dip.Temperature < from.Temperature ? Bracket(problem, first, dip) : Bracket(problem, from, dip);
            }

            if (to.Residual <= 0) return Bracket(problem, from, to);
            (before, from) = (from, to);
        }

        return null;
    }

    private static double Vertex(in LeafTrial a, in LeafTrial b, in LeafTrial c)
    {
        var step = 0.5 * (c.Temperature - a.Temperature);
        return b.Temperature + (0.5 * step * (a.Residual - c.Residual) / (a.Residual - (2 * b.Residual) + c.Residual));
    }

    /// <summary>
    /// Regula falsi in the Illinois form (Dowell &amp; Jarratt 1971, BIT 11:168-174, doi:10.1007/BF01934364) between
    /// a leaf that is too cold and one that is too hot; every third step halves the bracket, so that a kink cannot
    /// hold it up.
    /// </summary>
    private static LeafTrial Bracket(in LeafProblem problem, LeafTrial cold, LeafTrial hot)
    {
        var coldWeight = 1.0;
        var hotWeight = 1.0;
        for (var step = 0; step < 60; step++)
        {
            var coldResidual = coldWeight * cold.Residual;
            var hotResidual = hotWeight * hot.Residual;
            var width = hot.Temperature - cold.Temperature;
            var share = step % 3 == 2 ? 0.5 : coldResidual / (coldResidual - hotResidual);
            var trial = problem.At(cold.Temperature + (share * width), cold.IntercellularCo2, FineCo2Tolerance);
            if (Math.Abs(trial.Residual) < 1e-5 * trial.Decline || width < 1e-7) return trial;
            if (trial.Residual > 0)
            {
                (cold, coldWeight) = (trial, 1);
                hotWeight *= 0.5;
            }
            else
            {
                (hot, hotWeight) = (trial, 1);
                coldWeight *= 0.5;
            }
        }

        return cold;
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
