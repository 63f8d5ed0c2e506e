namespace CanopySim.Weather;

/// <summary>
/// Amounts of mean 1 of which a share is exponential of one mean and the rest of another: f(x) = (α/β1) exp(−x/β1) +
/// ((1−α)/β2) exp(−x/β2), α β1 + (1−α) β2 = 1.
/// </summary>
internal readonly record struct ExponentialMixture(double Share, double FirstMean, double SecondMean)
{
    // With fewer amounts a second mean would tell single days.
    private const int FewestAmounts = 20;

    private const int Rounds = 200;

    /// <summary>By expectation-maximization, which keeps the mean of the amounts; these are then told in units of it.</summary>
    public static ExponentialMixture Fit(IReadOnlyList<double> amounts)
    {
        var mean = amounts.Count > 0 ? amounts.Average() : 0;
        if (amounts.Count < FewestAmounts || mean <= 0) return new ExponentialMixture(1, 1, 1);
        var (share, first, second) = (0.5, 0.5 * mean, 1.5 * mean);
        for (var round = 0; round < Rounds; round++)
        {
            var (ofFirst, sumOfFirst, sum) = (0.0, 0.0, 0.0);
            foreach (var amount in amounts)
            {
                var one = share / first * Math.Exp(-amount / first);
                var other = (1 - share) / second * Math.Exp(-amount / second);
                ofFirst += one / (one + other);
                sumOfFirst += one / (one + other) * amount;
                sum += amount;
            }

            var ofSecond = amounts.Count - ofFirst;
            if (ofFirst < 1 || ofSecond < 1 || sumOfFirst <= 0 || sum - sumOfFirst <= 0) break;
            (share, first, second) = (ofFirst / amounts.Count, sumOfFirst / ofFirst, (sum - sumOfFirst) / ofSecond);
        }

        var fitted = share * first + (1 - share) * second;
        return new ExponentialMixture(share, first / fitted, second / fitted);
    }

    /// <summary>An amount from two uniform values in [0, 1).</summary>
    public double At(double kind, double uniform) => -(kind < Share ? FirstMean : SecondMean) * Math.Log(1 - uniform);
}
