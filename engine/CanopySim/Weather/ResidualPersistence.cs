using CanopySim.Numerics;

namespace CanopySim.Weather;

/// <summary>
/// How one day's residuals come from the day's before: x(t) = A x(t−1) + B ε(t), A = M1 M0⁻¹, B Bᵀ = M0 − M1 M0⁻¹ M1ᵀ, with M0 the
/// correlations within a day, M1 those with the day before, ε standard normal. Matalas 1967, doi:10.1029/WR003i004p00937, as
/// Richardson 1981 (doi:10.1029/WR017i001p00182) uses it, Eqs. 4-6 from memory.
/// </summary>
internal sealed class ResidualPersistence
{
    private readonly AirQuantity[] _quantities;
    private readonly double[,] _fromYesterday;
    private readonly double[,] _fromChance;

    /// <param name="quantities">The quantities with the scores of the record's days, in order of time.</param>
    public ResidualPersistence(IReadOnlyList<AirQuantityClimate> quantities)
    {
        var size = quantities.Count;
        _quantities = [.. quantities.Select(quantity => quantity.Quantity)];
        var (within, lagged) = (Correlations(quantities, 0), Correlations(quantities, 1));
        var root = SmallMatrix.Root(within);
        _fromYesterday = new double[size, size];
        var rest = new double[size, size];
        for (var row = 0; row < size; row++)
        {
            var solved = SmallMatrix.Solve(root, [.. Enumerable.Range(0, size).Select(column => lagged[row, column])]);
            for (var column = 0; column < size; column++)
            {
                _fromYesterday[row, column] = solved[column];
                rest[row, column] = within[row, column] - Enumerable.Range(0, size).Sum(k => solved[k] * lagged[column, k]);
            }
        }

        _fromChance = SmallMatrix.Root(rest);
    }

    public double[] Next(double[] yesterday, DateOnly date, ulong seed)
    {
        var size = _quantities.Length;
        var today = new double[size];
        for (var cause = 0; cause < size; cause++)
        {
            var chance = SeededValue.Normal(seed, "weather residual", date.DayNumber, (int)_quantities[cause]);
            for (var row = 0; row < size; row++)
                today[row] += _fromYesterday[row, cause] * yesterday[cause] + _fromChance[row, cause] * chance;
        }

        return today;
    }

    // Sums over all days are divided by the same count for both lags: only then does the process never grow and B always exist.
    private static double[,] Correlations(IReadOnlyList<AirQuantityClimate> quantities, int lag)
    {
        var size = quantities.Count;
        double Product(int row, int column, int shift)
        {
            var (today, before) = (quantities[row].Scores, quantities[column].Scores);
            var sum = 0.0;
            for (var day = shift; day < today.Length; day++) sum += today[day] * before[day - shift];
            return sum;
        }

        var correlations = new double[size, size];
        for (var row = 0; row < size; row++)
            for (var column = 0; column < size; column++)
                correlations[row, column] = Product(row, column, lag) / Math.Sqrt(Product(row, row, 0) * Product(column, column, 0));
        return correlations;
    }
}
