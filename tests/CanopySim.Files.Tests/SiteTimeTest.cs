using Xunit;

namespace CanopySim.Files.Tests;

public sealed class SiteTimeTest
{
    private static readonly InputPlace At = new("--at");

    [Theory]
    [InlineData("UTC", 0)]
    [InlineData("UTC-08:00", -8)]
    [InlineData("UTC+5:30", 5.5)]
    [InlineData("UTC−3", -3)]
    [InlineData("America/Los_Angeles", -8)]
    [InlineData("Australia/Adelaide", 9.5)]
    [InlineData("Europe/Paris", 1)]
    public void StandardTimeLeavesOutDaylightSaving(string zone, double hours) => Assert.Equal(hours, SiteTime.TryOf(zone)!.StandardOffsetHours());

    [Theory]
    [InlineData("2024-07-01T13:30", "2024-07-01T20:30:00Z")]
    [InlineData("2024-07-01 13:30:15", "2024-07-01T20:30:15Z")]
    [InlineData("2024-01-01T13:30", "2024-01-01T21:30:00Z")]
    [InlineData("2024-07-01T13:30Z", "2024-07-01T13:30:00Z")]
    [InlineData("2024-07-01T13:30+02:00", "2024-07-01T11:30:00Z")]
    [InlineData("2024-11-03T01:30", "2024-11-03T08:30:00Z")]
    public void ReadsTimes(string text, string utc) => Assert.Equal(
        DateTimeOffset.Parse(utc, System.Globalization.CultureInfo.InvariantCulture), SiteTime.TryOf("America/Los_Angeles")!.Read(text, At));

    [Theory]
    [InlineData("2024-03-10T02:30", "--at: \"2024-03-10T02:30\", which the clocks skip in America/Los_Angeles; expected a time that the clocks show")]
    [InlineData("noon", "--at: \"noon\" is no time; expected a time such as 2024-07-01T13:30, or with an offset 2024-07-01T13:30-07:00")]
    [InlineData("2024-02-30T12:00", "--at: \"2024-02-30T12:00\" is no time; expected a time such as 2024-07-01T13:30, or with an offset 2024-07-01T13:30-07:00")]
    public void RefusesWhatIsNoTime(string text, string message) =>
        Assert.Equal(message, Assert.Throws<InputError>(() => SiteTime.TryOf("America/Los_Angeles")!.Read(text, At)).Message);

    [Theory]
    [InlineData("")]
    [InlineData("Pacific")]
    [InlineData("UTC+15:00")]
    [InlineData("UTC-08:75")]
    public void KnowsNoOtherZones(string zone) => Assert.Null(SiteTime.TryOf(zone));
}
