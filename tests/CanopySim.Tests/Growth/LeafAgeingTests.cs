using CanopySim.Carbon;
using CanopySim.Growth;
using CanopySim.Plants;
using Xunit;

namespace CanopySim.Tests.Growth;

public class LeafAgeingTests
{
    // Poni et al. 1994, Am J Enol Vitic 45:71-78: best at 30 to 35 d, decline from about 50 d, 45 % at four months.
    [Fact]
    public void Efficiency_meets_the_measured_points()
    {
        var curve = new LeafAgeCurve();
        Assert.Equal(1, curve.At(30), 1e-12);
        Assert.Equal(1, curve.At(35), 1e-12);
        Assert.InRange(curve.At(50), 0.95, 1);
        Assert.Equal(0.45, curve.At(120), 1e-12);
        // "Clearly lower" under 15 d; the size is shape only.
        Assert.All(Enumerable.Range(0, 15), age => Assert.True(curve.At(age) < 0.7));
    }

    [Fact]
    public void Efficiency_rises_once_and_then_falls()
    {
        var curve = new LeafAgeCurve();
        for (var age = 0; age < 200; age++)
        {
            if (age < 35) Assert.True(curve.At(age + 1) >= curve.At(age) - 1e-12);
            else Assert.True(curve.At(age + 1) <= curve.At(age) + 1e-12);
        }

        Assert.Equal(curve.At(180), curve.At(400), 1e-12);
    }

    // Life of a leaf 120 to 170 d, basal ones from 110 to 130 d where shaded: general, from memory. Here 150 and 105.
    [Theory]
    [InlineData(1.0, 150)]
    [InlineData(0.08, 150)]
    [InlineData(0.04, 124)]
    [InlineData(0.0, 105)]
    public void A_leaf_falls_when_it_is_worn(double relativeLight, int lastDay)
    {
        var (vine, leaf) = VineWithALeaf();
        leaf.RelativeLight = relativeLight;
        var senescence = new LeafSenescence(new GrowthParameters(), new CarbonParameters(), new LeafAgeCurve());
        var days = 0;
        var shed = 0.0;
        while (vine.Leaves().Any() && days < 500)
        {
            shed += senescence.Advance(vine);
            days++;
        }

        Assert.InRange(days, lastDay - 1, lastDay + 1);
        // 100 cm² at 75 g m⁻².
        Assert.Equal(0.75, shed, 1e-12);
    }

    [Fact]
    public void A_leaf_that_has_not_unfolded_does_not_age()
    {
        var (vine, leaf) = VineWithALeaf();
        leaf.UnfoldedOn = null;
        new LeafSenescence(new GrowthParameters(), new CarbonParameters(), new LeafAgeCurve()).Advance(vine);
        Assert.Equal(0, leaf.AgeDays);
    }

    [Fact]
    public void On_a_vine_that_was_cut_leaves_past_their_best_age_more_slowly()
    {
        var growth = new GrowthParameters();
        var (vine, leaf) = VineWithALeaf();
        // As much was cut off as hangs: half of the saving.
        vine.RemovedLeafArea = leaf.Area;
        var senescence = new LeafSenescence(growth, new CarbonParameters(), new LeafAgeCurve());
        for (var day = 0; day < 40; day++) senescence.Advance(vine);
        Assert.Equal(40, leaf.PhysiologicalAge, 1e-9);
        for (var day = 0; day < 30; day++) senescence.Advance(vine);
        Assert.Equal(70, leaf.AgeDays);
        Assert.Equal(40 + (30 * (1 - (growth.AgeingSavedByLeafLoss / 2))), leaf.PhysiologicalAge, 1e-9);
    }

    [Fact]
    public void A_cut_is_remembered_by_what_was_cut_and_not_by_what_falls_later()
    {
        var (vine, leaf) = VineWithALeaf();
        vine.RemovedLeafArea = 0.01;
        vine.ShedLeafArea = 0.08;
        leaf.PhysiologicalAge = 100;
        new LeafSenescence(new GrowthParameters(), new CarbonParameters(), new LeafAgeCurve()).Advance(vine);
        Assert.Equal(101 - (0.1 * new GrowthParameters().AgeingSavedByLeafLoss), leaf.PhysiologicalAge, 1e-9);
    }

    private static (Vine Vine, Leaf Leaf) VineWithALeaf()
    {
        var vine = new Vine(new VineId(0), 0.75, new VineCarbon(1000, 100));
        var shoot = new Shoot(new ShootId(0), vine.Id, 1, 0.75, 1);
        var leaf = new Leaf(new LeafId(0), shoot, 1, 0.01) { Area = 0.01, UnfoldedOn = new DateOnly(2025, 4, 1) };
        shoot.Add(new Phytomer(1, 0.05, leaf));
        vine.Add(shoot);
        return (vine, leaf);
    }
}
