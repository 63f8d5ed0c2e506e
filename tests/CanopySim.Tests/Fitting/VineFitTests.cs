using CanopySim.Fitting;
using CanopySim.Results;
using CanopySim.Tests.Seasons;
using Xunit;

namespace CanopySim.Tests.Fitting;

/// <summary>Vines fitted to a vine of the same model whose traits are known, on a short piece of row in spring.</summary>
public class VineFitTests
{
    private static readonly DateOnly[] Days = [new(2025, 4, 25), new(2025, 5, 12)];
    private static readonly DateOnly Probe = new(2025, 5, 19);

    // So wide that it tells nothing.
    private const double ErrorOfNoNote = 1e6;

    // Fitted once for the tests that look at it.
    private static readonly Lazy<FittedVines> OfSeen = new(() => Fit(Seen()));

    [Fact]
    public void Budbreak_and_two_days_of_lengths_and_nodes_bring_the_vines_to_the_truth()
    {
        var fit = OfSeen.Value;
        Assert.All(fit.Effects, effect =>
        {
            Assert.False(effect.IsExcluded);
            Assert.True(effect.Narrowing > 0.1, $"{effect}");
            Assert.True(effect.SurpriseAfter < 1.5, $"{effect}");
        });
    }

    // A week after the last note, of which nothing was told: the fitted vines are nearer to the truth there, and closer together.
    [Fact]
    public void What_comes_after_the_notes_is_foretold_better()
    {
        var (season, truth) = Truth(Probe);
        var unseen = new[] { ObservedQuantity.ShootLength, ObservedQuantity.Nodes }
            .Select(quantity => new Observation(Probe, quantity, 0, ErrorOfNoNote)).ToList();
        var fit = Fit([.. Seen(), .. unseen]);
        Assert.All(fit.Effects.TakeLast(2), effect =>
        {
            var actual = SeasonReading.Predict(effect.Observation, season, truth);
            Assert.True(Math.Abs(effect.MeanAfter - actual) < 0.5 * Math.Abs(effect.MeanBefore - actual), $"{actual}: {effect}");
            Assert.True(effect.SpreadAfter < 0.7 * effect.SpreadBefore, $"{actual}: {effect}");
        });
    }

    // What no note tells of stays as wide as it was, but for the chance of forty members.
    [Fact]
    public void Traits_of_autumn_stay_wide_in_spring()
    {
        var fit = OfSeen.Value;
        foreach (var trait in new[] { Number("sugar"), Number("veraison"), Number("set") })
            Assert.InRange(Spread(fit.Traits, trait) / Spread(fit.Before, trait) / VineFit.ModelError, 0.75, 1.2);
    }

    [Fact]
    public void A_length_that_no_vine_has_is_left_out_and_bends_nothing()
    {
        var seen = Seen();
        var mistyped = new Observation(Days[1], ObservedQuantity.ShootLength, 4.2, 0.3);
        var with = Fit([.. seen, mistyped]);
        Assert.Equal([false, false, false, false, false, true], with.Effects.Select(effect => effect.IsExcluded));
        Assert.Equal(OfSeen.Value.Traits.SelectMany(row => row), with.Traits.SelectMany(row => row));
    }

    [Fact]
    public void Threads_change_no_bit() => Assert.Equal(
        OfSeen.Value.Traits.SelectMany(row => row), Fit(Seen(), threads: 1).Traits.SelectMany(row => row));

    [Fact]
    public void Without_notes_the_vines_stay_as_they_were_drawn()
    {
        var fit = Fit([]);
        for (var trait = 0; trait < VineTraits.All.Count; trait++)
        {
            Assert.Equal(VineFit.ModelError, Spread(fit.Traits, trait) / Spread(fit.Before, trait), 1e-9);
            Assert.Equal(fit.Before.Average(member => member[trait]), fit.Traits.Average(member => member[trait]), 1e-9);
        }
        Assert.Empty(fit.Effects);
    }

    private static (SeasonResult Season, Scenario Truth) Truth(DateOnly until)
    {
        var deviations = new double[VineTraits.All.Count];
        (deviations[Number("phyllochron")], deviations[Number("internode")]) = (1.5, -1.5);
        var truth = VineTraits.Apply(SeasonCases.Small, deviations);
        return (SeasonCases.Run(truth, until), truth);
    }

    private static List<Observation> Seen()
    {
        var (season, truth) = Truth(Days[^1]);
        var seen = new List<Observation>
        {
            new(Days[0], ObservedQuantity.Budbreak, season.Summary.Dates.Budbreak!.Value.DayNumber, 1),
        };
        foreach (var day in Days)
            foreach (var (quantity, error) in new[] { (ObservedQuantity.ShootLength, 0.02), (ObservedQuantity.Nodes, 0.4) })
            {
                var asked = new Observation(day, quantity, 0, error);
                seen.Add(asked with { Value = SeasonReading.Predict(asked, season, truth) });
            }

        return seen;
    }

    private static FittedVines Fit(IReadOnlyList<Observation> seen, int threads = 2) => VineFit.Fit(
        SeasonCases.Small, SeasonCases.Northern(SeasonCases.Small), SeasonCases.UtcOffset, seen,
        new FitOptions { Members = 40, Steps = 2, Threads = threads });

    private static int Number(string name) => VineTraits.All.Select((trait, i) => (trait.Name, i)).First(pair => pair.Name == name).i;

    private static double Spread(IReadOnlyList<double[]> traits, int trait)
    {
        var mean = traits.Average(row => row[trait]);
        return Math.Sqrt(traits.Average(row => (row[trait] - mean) * (row[trait] - mean)));
    }
}
