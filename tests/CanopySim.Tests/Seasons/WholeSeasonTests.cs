using CanopySim.Geometry;
using CanopySim.Light;
using Xunit;

namespace CanopySim.Tests.Seasons;

public class WholeSeasonTests(WholeSeason season) : IClassFixture<WholeSeason>
{
    [Fact]
    public void Light_closes_every_hour() => Assert.InRange(season.Result.Summary.Checks.LightClosureMax, 0, 1e-3);

    [Fact]
    public void Carbon_closes_every_day() => Assert.InRange(season.Result.Summary.Checks.CarbonClosureMaxRelative, 0, 1e-9);

    [Fact]
    public void Full_leaf_has_1200_leaves() => Assert.True(season.Result.Summary.Checks.LeavesMax >= 1200, $"{season.Result.Summary.Checks.LeavesMax} leaves");

    [Fact]
    public void Stages_come_in_order()
    {
        var dates = season.Result.Summary.Dates;
        Assert.Equal("harvest", season.Result.Summary.EndReason);
        Assert.True(dates.Budbreak < dates.Bloom && dates.Bloom < dates.Veraison && dates.Veraison < dates.TargetSugar);
        Assert.Equal(dates.TargetSugar, dates.Harvest);
        Assert.Equal(dates.Harvest, dates.End);
        string[] order = ["dormant", "budbreak", "bloom", "veraison", "ripe"];
        var stages = season.Result.Days.Select(day => Array.IndexOf(order, day.Stage)).ToList();
        Assert.DoesNotContain(-1, stages);
        Assert.Equal(stages.Order(), stages);
    }

    [Fact]
    public void The_canopy_at_veraison_is_kept_with_the_ages_of_that_day()
    {
        var (portrait, summary) = (season.Result.Portrait!, season.Result.Summary);
        Assert.True(portrait.IsAtVeraison);
        Assert.Equal(summary.Dates.Veraison, portrait.Date);
        Assert.Equal(portrait.Scene.SurfaceCount, portrait.AgeOfSurface.Count);
        Assert.All(portrait.Scene.Kinds.Zip(portrait.AgeOfSurface), surface => Assert.Equal(surface.First == SurfaceKind.Blade, surface.Second >= 0));
        Assert.Equal(portrait.Date.DayNumber - summary.Dates.Budbreak!.Value.DayNumber, portrait.AgeOfSurface.Max(), 15.0);
        Assert.InRange(portrait.Extent.Height, 1.5, 3.5);
        Assert.InRange(portrait.Extent.HalfWidth, 0.15, 1.2);
    }

    [Fact]
    public void Days_follow_each_other()
    {
        var days = season.Result.Days;
        for (var i = 1; i < days.Count; i++) Assert.Equal(days[i - 1].Date.AddDays(1), days[i].Date);
        Assert.Equal(season.Result.Summary.Dates.End, days[^1].Date);
    }

    // 16 to 19 visible internodes at anthesis: Pratt & Coombe 1978, Vitis 17:125-133; two nodes of room for one weather year.
    [Fact]
    public void Bloom_finds_the_published_nodes() => Assert.InRange(season.Result.Summary.NodesAtBloom ?? 0, 14, 21);

    [Fact]
    public void No_reading_is_impossible()
    {
        foreach (var day in season.Result.Days)
        {
            Assert.InRange(day.FractionParAbsorbed, 0, 1);
            Assert.InRange(day.SoilWaterFraction, 0, 1);
            Assert.True(day.ReservesGPerVine >= 0 && day.TranspirationLPerVine >= 0 && day.RespirationGCo2PerVine >= 0);
            Assert.InRange(day.LateralLeafAreaM2PerVine, 0, day.LeafAreaM2PerVine);
            if (day.MeanLeafEfficiency is { } efficiency) Assert.InRange(efficiency, 0, 1);
        }
    }

    [Fact]
    public void Sugar_rises_from_veraison_to_the_target()
    {
        var sugar = season.Result.Days.Where(day => day.SugarBrix is not null).Select(day => day.SugarBrix!.Value).ToList();
        // 5.5 Brix at veraison: common practice, no source. The first day of loading is counted already.
        Assert.InRange(sugar[0], 5.4, 6.2);
        Assert.Equal(sugar.Order(), sugar);
        Assert.InRange(sugar[^1], 22, 22.6);
    }

    [Fact]
    public void Age_classes_add_up_to_the_leaves_that_unfolded()
    {
        var result = season.Result;
        foreach (var rows in result.LeafAges.GroupBy(row => row.Date))
        {
            var day = result.Days.Single(candidate => candidate.Date == rows.Key);
            // Blades that fell since a draft placed them are still lit, at most so many.
            var largest = day.LeafAreaM2PerVine / (1 - LightQuality.Draft.AreaDrift);
            Assert.True(rows.Sum(row => row.LeafAreaM2PerVine) <= largest + 1e-9, $"{rows.Key}: {rows.Sum(row => row.LeafAreaM2PerVine)} m² of {largest}");
            Assert.True(rows.Sum(row => row.AbsorbedParMolPerVine) <= day.AbsorbedParMolPerVine + 1e-9);
        }

        Assert.Equal(1, result.Summary.RipeningCarbonByLeafAge.Sum(share => share.Share), 1e-9);
    }
}
