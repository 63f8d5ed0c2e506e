using MathNet.Numerics.LinearAlgebra;

namespace CanopySim.Fitting;

/// <summary>
/// Moves the members of an ensemble towards what was observed, as far as members that differ in a trait differ in what was observed: the
/// ensemble smoother with multiple data assimilation, Emerick &amp; Reynolds 2013, doi:10.1016/j.cageo.2012.03.011, from memory. The same
/// observations are taken in several steps, each with its error variance raised so much that together they count once, because
/// vines do not answer in straight lines. Covariances of few members hold chance; each is damped by how little its correlation
/// stands out of it, after Furrer &amp; Bengtsson 2007, doi:10.1016/j.jmva.2006.08.003, from memory.
/// </summary>
public static class EnsembleSmoother
{
    /// <summary>Traits of the members after one step.</summary>
    /// <param name="traits">Traits, [member][trait].</param>
    /// <param name="predictions">What each member would have shown, [member][observation].</param>
    /// <param name="innovations">
    /// Observed less predicted, the observed disturbed by its error as this step takes it; 0 where a member already agrees,
    /// [member][observation].
    /// </param>
    /// <param name="errors">Standard error of each observation, not raised.</param>
    /// <param name="inflation">Factor of the error variance in this step; the reciprocals of all steps add up to 1.</param>
    /// <exception cref="ArgumentException">Sizes differ, members are fewer than three, or an error is not positive.</exception>
    public static double[][] Step(
        IReadOnlyList<double[]> traits, IReadOnlyList<double[]> predictions, IReadOnlyList<double[]> innovations,
        IReadOnlyList<double> errors, double inflation)
    {
        var (members, observations) = (traits.Count, errors.Count);
        if (members < 3 || predictions.Count != members || innovations.Count != members)
            throw new ArgumentException($"{members} members with {predictions.Count} predictions and {innovations.Count} innovations");
        if (errors.Any(error => !(error > 0)) || predictions.Any(row => row.Length != observations))
            throw new ArgumentException("each observation needs a prediction of every member and a positive error");
        if (observations == 0) return [.. traits.Select(row => (double[])row.Clone())];

        var trait = Deviations(traits);
        var shown = Deviations(predictions);
        var ofShown = shown.TransposeThisAndMultiply(shown) / (members - 1);
        var across = trait.TransposeThisAndMultiply(shown) / (members - 1);
        var traitVariance = Variances(trait, members);
        var spread = ofShown.Diagonal();
        for (var p = 0; p < across.RowCount; p++)
            for (var k = 0; k < observations; k++)
                across[p, k] *= Trust(across[p, k], traitVariance[p], spread[k], members);

        // Each observation in units of its error, so that kinds of quite another size solve well.
        var scaled = Matrix<double>.Build.Dense(observations, observations, (i, k) =>
            (ofShown[i, k] / (errors[i] * errors[k])) + (i == k ? inflation : 0));
        var solve = scaled.Cholesky();
        return [.. traits.Select((row, j) => Moved(row, j))];

        double[] Moved(double[] row, int member)
        {
            var pull = solve.Solve(Vector<double>.Build.Dense(observations, k => innovations[member][k] / errors[k]));
            var moved = (double[])row.Clone();
            for (var p = 0; p < moved.Length; p++)
                for (var k = 0; k < observations; k++)
                    moved[p] += across[p, k] / errors[k] * pull[k];
            return moved;
        }
    }

    // Deviations from the mean, a row a member.
    private static Matrix<double> Deviations(IReadOnlyList<double[]> rows)
    {
        var matrix = Matrix<double>.Build.DenseOfRowArrays(rows);
        var means = matrix.ColumnSums() / rows.Count;
        for (var row = 0; row < matrix.RowCount; row++)
            for (var column = 0; column < matrix.ColumnCount; column++)
                matrix[row, column] -= means[column];
        return matrix;
    }

    private static double[] Variances(Matrix<double> deviations, int members) =>
        [.. deviations.EnumerateColumns().Select(column => column.DotProduct(column) / (members - 1))];

    private static double Trust(double covariance, double traitVariance, double spread, int members)
    {
        if (traitVariance <= 0 || spread <= 0) return 0;
        var squared = Math.Min(1, covariance * covariance / (traitVariance * spread));
        return squared / (squared + ((1 + squared) / members));
    }
}
