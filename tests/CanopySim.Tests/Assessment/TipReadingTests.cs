using CanopySim.Assessment;
using Xunit;

namespace CanopySim.Tests.Assessment;

public class TipReadingTests
{
    private static readonly DateOnly Day = new(2025, 7, 1);

    [Theory]
    [InlineData(8, 2, 0, TipState.GrowingFreely)]
    [InlineData(2, 3, 5, TipState.Stopped)]
    [InlineData(3, 4, 3, TipState.Slowing)]
    [InlineData(5, 0, 5, TipState.Slowing)]
    public void Most_tips_decide_and_a_tie_is_between(int free, int slowing, int stopped, TipState state) =>
        Assert.Equal(state, new NotedTips(Day, free, slowing, stopped).State);

    [Fact]
    public void Nothing_noted_is_no_state()
    {
        Assert.Null(new NotedTips(Day, 0, 0, 0).State);
        Assert.Null(new NotedTips(Day, 0, 0, 0).Upper);
        Assert.Equal(TipMeaning.NotNoted, Read(new NotedTips(Day, 0, 0, 0, 3, 1)).Meaning);
    }

    [Theory]
    [InlineData(9, 0, 0, 0.9, 0.1, TipAgreement.Agrees)]
    [InlineData(9, 0, 0, 0.1, 0.9, TipAgreement.Near)]
    [InlineData(0, 0, 9, 0.9, 0.1, TipAgreement.Contradicts)]
    [InlineData(0, 0, 0, 0.9, 0.1, TipAgreement.None)]
    public void The_states_of_most_tips_are_compared(
        int free, int slowing, int stopped, double modelFree, double modelSlowing, TipAgreement agreement) =>
        Assert.Equal(
            agreement, Read(new NotedTips(Day, free, slowing, stopped), Model(modelFree, modelSlowing)).Tips);

    // Assumed: internodes shorten below 0.8 of those under them.
    [Theory]
    [InlineData(0, 4, 0.79, TipAgreement.Agrees)]
    [InlineData(0, 4, 0.81, TipAgreement.Contradicts)]
    [InlineData(4, 0, 0.81, TipAgreement.Agrees)]
    [InlineData(2, 2, 0.79, TipAgreement.Agrees)]
    [InlineData(0, 0, 0.79, TipAgreement.None)]
    public void Internodes_are_compared_by_their_trend(int even, int shortening, double trend, TipAgreement agreement) =>
        Assert.Equal(agreement, Read(new NotedTips(Day, 5, 0, 0, even, shortening), Model(trend: trend)).Internodes);

    // Soil at 0.45 of its water takes 13 % of expansion (a straight line from 0.12 to 0.50); at 0.46 a tenth.
    [Theory]
    [InlineData(0.45, true)]
    [InlineData(0.47, false)]
    public void Dry_is_where_a_tenth_of_expansion_is_gone(double soil, bool dry) =>
        Assert.Equal(dry, TipReading.IsDry(Model(soil: soil)));

    [Theory]
    [InlineData('f', 0.9, 1.0, false, false, false, TipMeaning.WellSupplied)]
    [InlineData('f', 0.3, 1.0, true, false, false, TipMeaning.SoilWetterThanModel)]
    [InlineData('f', 0.3, 0.4, true, false, false, TipMeaning.SoilWetterThanModel)]
    [InlineData('f', 0.9, 0.4, false, false, false, TipMeaning.BetterFedThanModel)]
    [InlineData('f', 0.3, 1.0, true, true, false, TipMeaning.VigorousLate)]
    [InlineData('s', 0.3, 1.0, false, false, false, TipMeaning.ShortOfWater)]
    [InlineData('x', 0.3, 0.2, true, true, false, TipMeaning.ShortOfWater)]
    [InlineData('s', 0.9, 0.4, false, false, false, TipMeaning.ShortOfCarbon)]
    [InlineData('s', 0.9, 1.0, true, false, false, TipMeaning.Season)]
    [InlineData('s', 0.9, 1.0, false, false, false, TipMeaning.Unexplained)]
    [InlineData('x', 0.3, 1.0, true, false, true, TipMeaning.Topped)]
    [InlineData('s', 0.9, 1.0, true, false, true, TipMeaning.Season)]
    public void The_sign_is_read_with_water_carbon_and_season(
        char seen, double soil, double supply, bool bloomed, bool ripens, bool topped, TipMeaning meaning)
    {
        var noted = seen switch
        {
            'f' => new NotedTips(Day, 6, 1, 0),
            's' => new NotedTips(Day, 1, 6, 0),
            _ => new NotedTips(Day, 0, 1, 6),
        };
        Assert.Equal(meaning, TipReading.Of(
            noted, Model(soil: soil, supply: supply), bloomed ? Day.AddDays(-30) : null, ripens ? Day : null,
            topped ? Day.AddDays(-1) : null).Meaning);
    }

    // What comes later than the note has not happened yet.
    [Fact]
    public void Stages_and_topping_after_the_note_do_not_count()
    {
        var free = TipReading.Of(new NotedTips(Day, 6, 0, 0), Model(), Day.AddDays(-30), Day.AddDays(1), null);
        Assert.Equal(TipMeaning.WellSupplied, free.Meaning);
        var stopped = TipReading.Of(new NotedTips(Day, 0, 0, 6), Model(), Day.AddDays(2), null, Day.AddDays(1));
        Assert.Equal(TipMeaning.Unexplained, stopped.Meaning);
    }

    private static TipReading Read(NotedTips seen, TipSurvey? model = null) =>
        TipReading.Of(seen, model ?? Model(), null, null, null);

    private static TipSurvey Model(
        double free = 0.9, double slowing = 0.1, double soil = 0.9, double supply = 1, double trend = 1) => new()
        {
            Date = Day,
            GrowingFreely = free,
            Slowing = slowing,
            Stopped = 1 - free - slowing,
            LastInternodes = [trend, trend, trend, 1, 1, 1],
            SoilWaterFraction = soil,
            MainSupplyIndex = supply,
        };
}
