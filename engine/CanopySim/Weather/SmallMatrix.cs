namespace CanopySim.Weather;

/// <summary>The little linear algebra of a weather generator: symmetric matrices of at most a dozen rows.</summary>
internal static class SmallMatrix
{
    // Below this share of its diagonal a pivot is rounding: the row says nothing that the rows above it do not.
    private const double LeastPivot = 1e-10;

    /// <summary>
    /// The lower triangle L of A = L Lᵀ (Cholesky). A row that depends on those above it gets no pivot, so that a matrix that is
    /// only just not negative has its root too.
    /// </summary>
    public static double[,] Root(double[,] matrix)
    {
        var size = matrix.GetLength(0);
        var root = new double[size, size];
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column <= row; column++)
            {
                var rest = matrix[row, column];
                for (var k = 0; k < column; k++) rest -= root[row, k] * root[column, k];
                if (column == row) root[row, row] = rest > LeastPivot * matrix[row, row] ? Math.Sqrt(rest) : 0;
                else root[row, column] = root[column, column] > 0 ? rest / root[column, column] : 0;
            }
        }

        return root;
    }

    /// <summary>x of A x = b from the root of A; 0 in a row that has no pivot.</summary>
    public static double[] Solve(double[,] root, IReadOnlyList<double> right)
    {
        var size = right.Count;
        var x = new double[size];
        for (var row = 0; row < size; row++)
        {
            var rest = right[row];
            for (var k = 0; k < row; k++) rest -= root[row, k] * x[k];
            x[row] = root[row, row] > 0 ? rest / root[row, row] : 0;
        }

        for (var row = size - 1; row >= 0; row--)
        {
            var rest = x[row];
            for (var k = row + 1; k < size; k++) rest -= root[k, row] * x[k];
            x[row] = root[row, row] > 0 ? rest / root[row, row] : 0;
        }

        return x;
    }
}
