using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Painting;
using CanopySim.Drawing.Pictures;
using CanopySim.Drawing.Views;
using SkiaSharp;

namespace CanopySim.Viewer.Tests.Pictures;

public class CanopyPictureTest
{
    private static readonly PictureOptions Small = new() { Width = 320, Height = 240 };

    [Theory]
    [InlineData(ViewPoint.Along)]
    [InlineData(ViewPoint.Above)]
    public void The_same_picture_twice_has_the_same_bytes_and_the_asked_size(ViewPoint from)
    {
        var (first, second) = (Make(), Make());
        Assert.Equal(first.Bytes, second.Bytes);
        using var bitmap = SKBitmap.Decode(first.Bytes);
        Assert.Equal((320, 240), (bitmap.Width, bitmap.Height));
        Assert.True(bitmap.Pixels.Distinct().Count() > 500, "a picture, not a plain surface");

        FinishedPicture Make()
        {
            using var context = RecordedBlock.Context();
            using var recording = RecordedBlock.Open();
            using var picture = new CanopyPicture(context, recording, Small with { From = from });
            return picture.Png(new Moment(recording.DayCount - 1, 10.5, LeafQuantity.CarbonOfDay));
        }
    }

    [Fact]
    public void The_sentence_says_what_day_and_what_is_seen()
    {
        using var context = RecordedBlock.Context();
        using var recording = RecordedBlock.Open();
        using var picture = new CanopyPicture(context, recording, Small);
        var last = recording.DayCount - 1;
        var sentence = picture.Png(new Moment(last, 10.5, LeafQuantity.Age)).Sentence;
        Assert.StartsWith("First season, 15 June 2025, 10:30 standard time: ", sentence);
        Assert.Contains("seen along the row; age 0 to ", sentence);
        Assert.Contains($"{recording.Leaves(last).AgeDays.Max()} days", sentence);
        Assert.Contains("No leaves", picture.Png(new Moment(0, 10.5, LeafQuantity.Age)).Sentence);
    }

    // Beside the words there is no room for it: it would lie over the title.
    [Fact]
    public void A_small_picture_has_its_legend_under_its_words()
    {
        using var context = RecordedBlock.Context();
        using var recording = RecordedBlock.Open();
        using var picture = new CanopyPicture(context, recording, Small);
        using var bitmap = SKBitmap.Decode(
            picture.Png(new Moment(recording.DayCount - 1, 10.5, LeafQuantity.Age)).Bytes);
        var (dark, end) = (ScreenColor(SceneTheme.Light.Text), ScreenColor(LeafColoring.Fixed(LeafQuantity.Age).Table()[^1]));
        var title = Rows(bitmap, 120, dark).First();
        var ramp = Rows(bitmap, title, end).First();
        Assert.InRange(ramp - title, 50, 110);
        Assert.DoesNotContain(end, Enumerable.Range(0, 240).Select(x => bitmap.GetPixel(x, ramp)));

        static SKColor ScreenColor(uint rgb) => new(0xFF000000 | rgb);

        static IEnumerable<int> Rows(SKBitmap of, int from, SKColor color) => Enumerable.Range(from, of.Height - from)
            .Where(y => Enumerable.Range(0, of.Width).Any(x => of.GetPixel(x, y) == color));
    }

    [Fact]
    public void A_day_without_leaves_is_said_to_have_none()
    {
        using var context = RecordedBlock.Context();
        using var recording = RecordedBlock.Open();
        using var picture = new CanopyPicture(context, recording, Small);
        Assert.EndsWith(
            "No leaves on one vine, which the row repeats, seen along the row.",
            picture.Png(new Moment(0, 10.5, LeafQuantity.Age)).Sentence);
    }

    [Fact]
    public void A_film_of_a_day_has_a_picture_for_each_lit_hour()
    {
        using var context = RecordedBlock.Context();
        using var recording = RecordedBlock.Open();
        var day = recording.DayCount - 1;
        var moments = CanopyFilm.OfDay(recording, LeafQuantity.LightNow, day);
        var film = CanopyFilm.Gif(context, recording, moments, new PictureOptions { Width = 200, Height = 200 }, null, TestContext.Current.CancellationToken);
        using var codec = SKCodec.Create(new MemoryStream(film.Bytes));
        Assert.Equal(recording.Hours(day).Count, codec.FrameCount);
        Assert.Equal((200, 200), (codec.Info.Width, codec.Info.Height));
        Assert.Contains("hour by hour", film.Sentence);
        Assert.InRange(moments.Count, 12, 16);
    }

    [Fact]
    public void A_film_of_the_season_has_every_day_with_leaves()
    {
        using var recording = RecordedBlock.Open();
        var moments = CanopyFilm.OfSeason(recording, LeafQuantity.Age, 10.5);
        Assert.Equal(recording.DayCount - 1, moments[^1].Day);
        Assert.All(moments, moment => Assert.NotEmpty(recording.Canopy(moment.Day).Stalks));
    }
}
