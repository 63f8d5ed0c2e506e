using CanopySim.Numerics;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Weather;

/// <summary>The parts of the weather generator, each against a closed form or another library.</summary>
public class WeatherStatisticsTests
{
    [Fact]
    public void Scores_bring_back_the_residuals_they_were_made_of()
    {
        double[] residuals = [.. Enumerable.Range(0, 200).Select(day => Math.Exp(SeededValue.Normal(1, "skewed", day)))];
        var spread = new NormalScores(residuals);
        var scores = NormalScores.Of(residuals);
        for (var day = 0; day < residuals.Length; day++) Assert.Equal(residuals[day], spread.ResidualAt(scores[day]));

        // Beyond the record a score more is a standard deviation more.
        Assert.Equal(residuals.Max() + 1, spread.ResidualAt(scores.Max() + 1), 1e-12);
        Assert.Equal(residuals.Min() - 1, spread.ResidualAt(scores.Min() - 1), 1e-12);
    }

    [Fact]
    public void A_curve_of_its_own_form_is_found_again()
    {
        SeasonalDay[] days = [.. Enumerable.Range(0, 730).Select(day => SeasonalDay.Of(
            new DateOnly(2001, 1, 1).AddDays(day), SeededValue.Uniform(1, "wet", day) < 0.3, SeededValue.Uniform(1, "wet", day - 1) < 0.3))];
        static double Truth(SeasonalDay day) => 15 - 8 * Math.Cos(day.Phase) + 2 * Math.Sin(2 * day.Phase)
            + (day.IsWet ? -3 + Math.Sin(day.Phase) : 0) + (day.WasWet ? -1 - 0.5 * Math.Cos(day.Phase) : 0);
        var curve = SeasonalCurve.Fit(days, [.. days.Select(Truth)], 2, RainTerms.TodayAndYesterday);
        Assert.All(days, day => Assert.Equal(Truth(day), curve.At(day), 1e-9));
    }

    [Fact]
    public void A_matrix_is_its_root_squared_and_solves_its_equations()
    {
        double[,] matrix = { { 4, 2, -1 }, { 2, 5, 0.5 }, { -1, 0.5, 3 } };
        var root = SmallMatrix.Root(matrix);
        double[] x = [1, -2, 3];
        double[] right = [.. Enumerable.Range(0, 3).Select(row => Enumerable.Range(0, 3).Sum(k => matrix[row, k] * x[k]))];
        var solved = SmallMatrix.Solve(root, right);
        for (var row = 0; row < 3; row++)
        {
            Assert.Equal(x[row], solved[row], 1e-12);
            for (var column = 0; column < 3; column++)
                Assert.Equal(matrix[row, column], Enumerable.Range(0, 3).Sum(k => root[row, k] * root[column, k]), 1e-12);
        }

        // Of two rows that say the same the second is nothing.
        Assert.Equal(0, SmallMatrix.Root(new double[,] { { 1, 1 }, { 1, 1 } })[1, 1]);
    }

    /// <summary>Mean and mean square α β1 + (1−α) β2 and 2 (α β1² + (1−α) β2²) of drawn amounts, and of the mixture fitted to them.</summary>
    [Fact]
    public void A_mixture_is_found_again()
    {
        const int Count = 20_000;
        var truth = new ExponentialMixture(0.6, 0.25, 2.125);
        double[] drawn = [.. Enumerable.Range(0, Count).Select(i => truth.At(SeededValue.Uniform(1, "kind", i), SeededValue.Uniform(1, "amount", i)))];
        var fitted = ExponentialMixture.Fit(drawn);
        var square = 2 * (0.6 * 0.25 * 0.25 + 0.4 * 2.125 * 2.125);
        Assert.Equal(1, drawn.Average(), 4 * Math.Sqrt((square - 1) / Count));
        Assert.Equal(1, fitted.Share * fitted.FirstMean + (1 - fitted.Share) * fitted.SecondMean, 1e-12);

        // The fourth moment, 24 Σ share β⁴, says how well the second is known.
        var error = Math.Sqrt((24 * (0.6 * Math.Pow(0.25, 4) + 0.4 * Math.Pow(2.125, 4)) - square * square) / Count);
        var fittedSquare = 2 * (fitted.Share * fitted.FirstMean * fitted.FirstMean + (1 - fitted.Share) * fitted.SecondMean * fitted.SecondMean);
        Assert.Equal(square, fittedSquare, 4 * error);
        Assert.Equal(0.6, fitted.Share, 0.03);
    }
}
