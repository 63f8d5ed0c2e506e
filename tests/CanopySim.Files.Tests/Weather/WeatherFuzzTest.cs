using CanopySim.Files.Weather;
using CanopySim.Weather;
using CsCheck;
using Xunit;

namespace CanopySim.Files.Tests.Weather;

/// <summary>Whatever is done to a weather file, reading it succeeds or gives an <see cref="InputError"/> of one line.</summary>
public sealed class WeatherFuzzTest
{
    private const string Days = "date,tmin,tmax,rain [mm],rh,wind (mph)\n2014-04-01,5,15,0,60,4\n2014-04-02,4,14,2,70,5\n2014-04-03,6,16,0,65,3\n";

    private static readonly string Hours =
        "time;temp [°C];rh_%;ghi W/m2;pressure\n" + string.Concat(Enumerable.Range(0, 60).Select(hour => $"2014-04-{1 + (hour / 24):00}T{hour % 24:00}:00;{hour % 24};60;{hour % 24 * 10};1013\n"));

    private static readonly string Epw =
        TestWeather.EpwHeader + string.Concat(Enumerable.Range(1, 24).Select(hour => TestWeather.EpwRow(2014, 4, 1, hour, hour, 0)));

    [Theory]
    [InlineData("days", "0000KOIPe036")]
    [InlineData("hours", "0000KOIPe036")]
    [InlineData("EPW", "0000KOIPe036")]
    public void NothingButInputErrors(string what, string seed)
    {
        var text = what switch { "days" => Days, "hours" => Hours, _ => Epw };
        var folder = Directory.CreateTempSubdirectory("canopysim-").FullName;
        var path = Path.Combine(folder, "weather.csv");
        var (read, refused) = (0, 0);
        // Undamaged it is read: else every case would be refused for the same reason.
        TestWeather.Read(text);
        try
        {
            Mutations.Of(text).Sample(
                bytes =>
                {
                    File.WriteAllBytes(path, bytes);
                    foreach (var fill in new[] { false, true })
                    {
                        try
                        {
                            WeatherFile.Read(path, new WeatherOptions { File = path, FillGaps = fill }, TestWeather.Seattle);
                            read++;
                        }
                        catch (InputError error)
                        {
                            Assert.DoesNotContain('\n', error.Message);
                            refused++;
                        }
                    }
                },
                iter: 4_000,
                threads: 1,
                seed: seed);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        // Both outcomes must occur, else the fuzz says nothing. Of the hourly files about one in fifty is still read, 160 of 8,000;
        // only the first case is fixed by the seed, so the bound leaves room.
        Assert.True(read > 50 && refused > 1_000, $"{read} read, {refused} refused");
    }
}
