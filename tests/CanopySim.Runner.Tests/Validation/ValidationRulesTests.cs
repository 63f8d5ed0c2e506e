using System.Reflection;
using CanopySim.Parameters;
using Xunit;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>The rules of the validation page, without a season.</summary>
public class ValidationRulesTests
{
    [Theory]
    [InlineData(115.1, nameof(Verdict.Failed))]
    [InlineData(115, nameof(Verdict.Passed))]
    [InlineData(85, nameof(Verdict.Passed))]
    [InlineData(84.9, nameof(Verdict.Failed))]
    [InlineData(double.NaN, nameof(Verdict.Failed))]
    public void A_verdict_follows_from_the_limit(double ours, string verdict) =>
        Assert.Equal(verdict, $"{Judged(new WithinPercent(15, 100), ours).Verdict}");

    [Fact]
    public void What_was_not_reached_fails_and_what_has_no_limit_is_only_reported()
    {
        Assert.Equal(Verdict.Failed, Judged(new WithinRange(0, 10), 5, null).Verdict);
        Assert.Equal(Verdict.Failed, Judged(new WithinPercent(15, 1, 2), 1).Verdict);
        Assert.Equal(Verdict.Reported, Finding.Told("q", "1", "s", 5).Verdict);
        Assert.Throws<ArgumentException>(() => Finding.Judged("q", Standing.Reported, new WithinRange(0, 1), "s", 1));
    }

    [Fact]
    public void Order_means_the_same_order_and_rising_means_each_step()
    {
        Assert.Equal(Verdict.Passed, Judged(new SameOrder(16.2, 23.8, 20.1), 1, 3, 2).Verdict);
        Assert.Equal(Verdict.Failed, Judged(new SameOrder(16.2, 23.8, 20.1), 1, 2, 3).Verdict);
        Assert.Equal(Verdict.Failed, Judged(new SameOrder(16.2, 23.8, 20.1), 1, 3, 3).Verdict);
        Assert.Equal(Verdict.Passed, Judged(new Rising("up"), 1, 2, 3).Verdict);
        Assert.Equal(Verdict.Failed, Judged(new Rising("up"), 1, 1).Verdict);
    }

    [Theory]
    [InlineData(2318, "2320")]
    [InlineData(130.4, "130")]
    [InlineData(8.4, "8.40")]
    [InlineData(0.0512, "0.0512")]
    [InlineData(-12.34, "-12.3")]
    [InlineData(0.9996, "1.00")]
    [InlineData(1000, "1000")]
    [InlineData(0, "0")]
    public void Numbers_have_three_digits(double value, string text) => Assert.Equal(text, NumberSay.Number(value));

    [Theory]
    [InlineData("| b [cm] | 1 | 130 | +3 % | passed |", true)]
    [InlineData("| b [cm] | 1 | 132 | +4 % | passed |", true)]
    [InlineData("| b [cm] | 1 | 133 | +3 % | passed |", false)]
    [InlineData("| b [cm] | 1 | 131 | +3 % | failed |", false)]
    [InlineData("| b [cm] | 2 | 131 | +3 % | passed |", false)]
    [InlineData("| b [cm] | 1 | not reached | +3 % | passed |", false)]
    public void A_page_may_differ_by_one_unit_of_the_last_digit_in_what_is_ours(string row, bool agrees)
    {
        const string Head = "| quantity | published | ours | difference | verdict |\n| --- | --- | --- | --- | --- |\n";
        const string Committed = "| b [cm] | 1 | 131 | +3 % | passed |";
        Assert.Equal(agrees, PageComparison.Differences(Head + Committed, Head + row).Count == 0);
    }

    [Fact]
    public void A_large_number_may_differ_by_one_in_its_third_digit_and_prose_by_one_in_its_last()
    {
        const string Head = "| quantity | ours | note |\n";
        Assert.Empty(PageComparison.Differences(Head + "| a | 2310 |  |", Head + "| a | 2320 |  |"));
        Assert.NotEmpty(PageComparison.Differences(Head + "| a | 2310 |  |", Head + "| a | 2330 |  |"));
        Assert.NotEmpty(PageComparison.Differences("of 2005 vines", "of 2015 vines"));
        Assert.NotEmpty(PageComparison.Differences("a\nb", "a"));
    }

    // Whoever fits a parameter says here to what, or the page would call that figure predicted.
    [Fact]
    public void Every_fitted_parameter_is_on_the_list_of_fitted_quantities()
    {
        var listed = FittedQuantities.Fitted.Values.SelectMany(names => names).ToHashSet();
        var fitted = typeof(Scenario).Assembly.GetTypes()
            .SelectMany(type => type.GetProperties().Where(property => property.GetCustomAttribute<ParameterAttribute>()?.Mark == Mark.Fitted)
                .Select(property => $"{type.Name}.{property.Name}")).ToList();
        Assert.NotEmpty(fitted);
        Assert.Equal(fitted.Order(), listed.Order());
        // Ten of growth and fruit at most; Vcmax is the leaf's.
        Assert.InRange(fitted.Count(name => !name.StartsWith("LeafParameters.", StringComparison.Ordinal)), 1, 10);
    }

    private static Finding Judged(Limit limit, params double?[] ours) => Finding.Judged("q", Standing.Predicted, limit, "s", ours);
}
