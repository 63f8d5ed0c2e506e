using CanopySim.Assessment;
using CanopySim.Files.Charts;
using CanopySim.Files.Forecast;
using CanopySim.Files.Tests.Notes;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Files.Tests.Forecast;

public sealed class TipWordsTest
{
    private static readonly DateOnly Day = new(2023, 6, 12);

    [Fact]
    public void Notes_of_a_day_are_counted_and_later_ones_wait()
    {
        var notes = NotesText.Read(
            "date,shoot,what,value\n2023-06-12,1,tip,stopped\n2023-06-12,2,tip,tendrils above tip\n2023-06-12,3,tip,above\n"
            + "2023-06-12,3,upper_internodes,even\n2023-06-12,4,upper_internodes,shortening\n2023-06-12,3,nodes,12\n"
            + "2023-06-02,1,tip,tip above tendrils\n2023-06-21,1,tip,stopped\n");
        Assert.Equal(
            [new NotedTips(new DateOnly(2023, 6, 2), 0, 1, 0), new NotedTips(Day, 2, 0, 1, 1, 1)],
            TipNotes.Of(notes, InventedVine.AsOf));
    }

    [Fact]
    public void Each_noted_day_is_read_beside_that_evening_and_the_last_topping_before_it()
    {
        var vine = InventedVine.Standing();
        var topped = new WorkDone(new DateOnly(2023, 6, 10), "topping", "topped", 20, 0, 40, 0.4, 0);
        vine = vine with { Season = vine.Season with { Work = [topped] } };
        var readings = TipNotes.Readings(
            NotesText.Read("date,what,value\n2023-03-01,tip,stopped\n2023-06-02,tip,stopped\n2023-06-12,tip,stopped\n"), vine);
        // In March no shoot stood.
        Assert.Equal([new DateOnly(2023, 6, 2), Day], readings.Select(reading => reading.Model.Date));
        Assert.Equal([TipMeaning.Season, TipMeaning.Topped], readings.Select(reading => reading.Meaning));
    }

    [Fact]
    public void Agreement_and_difference_are_said_with_what_both_show()
    {
        Assert.Equal(
            "12 June: tendrils stood above 8 of 10 tips, 2 of 10 had stopped. The model that evening: 75 % of the tips grow freely, "
            + "25 % slow down; 80 % of the soil's water is left, enough for growth. Both agree. Read together: water and carbon are "
            + "at hand, and the shoots are vigorous.",
            TipWords.Of(Read(new NotedTips(Day, 8, 0, 2), InventedVine.Tip(Day)), Units.Metric));
        // 3 + 3.5 + 4 over 5 + 5.2 + 5.5 cm is 0.67: shortening. 21 % of the water: expansion (0.21 - 0.12) / 0.38 is 0.237, laterals
        // and nodes nothing and (0.21 - 0.08) / 0.32, 0.406; stomata (0.21 - 0.02) / 0.33, 0.576.
        Assert.Equal(
            "12 June: the tip had stopped; upper internodes were even. The model that evening: 75 % of the tips grow freely, 25 % slow "
            + "down; 21 % of the soil's water is left, and dryness takes 100 % of laterals' pace, 76 % of internodes and leaves, "
            + "59 % of nodes, 42 % of stomata; the tips get less carbon than they could use. They contradict each other: noted "
            + "stopped, in the model most growing freely. Its upper internodes, though, are shortening (from the tip down 1.2, 1.4, "
            + "1.6, 2.0, 2.0, 2.2 in). Read together: dryness slows the shoots. Dig before you water: the model's soil is an estimate.",
            TipWords.Of(Read(new NotedTips(Day, 0, 0, 1, 1, 0), InventedVine.Tip(Day, soil: 0.21, supply: 0.3)), Units.Us));
        Assert.Contains(
            "They differ by a step: noted slowing, in the model most growing freely.",
            TipWords.Of(Read(new NotedTips(Day, 1, 6, 2), InventedVine.Tip(Day)), Units.Metric));
    }

    // A meaning without words of its own would say nothing.
    [Theory]
    [MemberData(nameof(Meanings))]
    public void Every_meaning_has_words_of_its_own(TipMeaning meaning)
    {
        var reading = Read(new NotedTips(Day, 3, 0, 0), InventedVine.Tip(Day)) with { Meaning = meaning };
        var words = TipWords.Of(reading, Units.Metric);
        Assert.All(
            Enum.GetValues<TipMeaning>().Where(other => other != meaning),
            other => Assert.NotEqual(TipWords.Of(reading with { Meaning = other }, Units.Metric), words));
    }

    public static TheoryData<TipMeaning> Meanings => [.. Enum.GetValues<TipMeaning>()];

    [Fact]
    public void Internodes_alone_are_told_too()
    {
        var words = TipWords.Of(Read(new NotedTips(Day, 0, 0, 0, 1, 3), InventedVine.Tip(Day)), Units.Metric);
        Assert.StartsWith("12 June: upper internodes were shortening on 3 of 4 shoots.", words);
        Assert.EndsWith(
            "Its upper internodes are shortening, too. Shortening internodes tell that growth slowed a week or two ago.", words);
    }

    [Fact]
    public void Without_notes_it_says_how_to_look_and_what_the_model_shows()
    {
        var words = TipWords.Paragraphs([], InventedVine.Tip(Day), Units.Metric);
        Assert.Equal(2, words.Count);
        Assert.Contains("tip: tendrils above tip", words[0]);
        Assert.StartsWith("The model on 12 June: 75 % of the tips grow freely", words[1]);
        Assert.Equal([TipWords.HowToLook], TipWords.Paragraphs([], null, Units.Metric));
    }

    [Fact]
    public void The_table_holds_noted_beside_simulated()
    {
        var rows = TipWords.Rows(Read(new NotedTips(Day, 8, 0, 2, 1, 3), InventedVine.Tip(Day)), Units.Metric).ToList();
        Assert.Equal(["8 of 10", "75 %"], rows[0].Skip(1));
        Assert.Equal(["0 of 10", "25 %"], rows[1].Skip(1));
        Assert.Equal(["shortening on 3 of 4", "shortening"], rows[3].Skip(1));
        Assert.Equal(["–", "3.0, 3.5, 4.0, 5.0, 5.2, 5.5 cm"], rows[4].Skip(1));
        Assert.Equal(["–", "80 %"], rows[5].Skip(1));
    }

    private static TipReading Read(NotedTips seen, TipSurvey model) =>
        TipReading.Of(seen, model, new DateOnly(2023, 5, 28), null, null);
}
