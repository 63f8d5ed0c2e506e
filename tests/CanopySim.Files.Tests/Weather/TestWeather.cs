using System.Globalization;
using System.Text;
using CanopySim.Files.Weather;
using CanopySim.Weather;

namespace CanopySim.Files.Tests.Weather;

/// <summary>Reads weather from texts, and writes EPW files of plain numbers.</summary>
internal static class TestWeather
{
    public static readonly Site Seattle = new() { Latitude = 47.6, Longitude = -122.3, TimeZone = "UTC-08:00" };

    public const string EpwHeader = """
        LOCATION,Nowhere,-,-,-,0,47.6,-122.3,-8.0,50.0
        DESIGN CONDITIONS,0
        TYPICAL/EXTREME PERIODS,0
        GROUND TEMPERATURES,0
        HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0
        COMMENTS 1,made for a test
        COMMENTS 2,-
        DATA PERIODS,1,1,Data,Sunday,1/1,12/31

        """;

    public static WeatherRecord Read(string text, WeatherOptions? options = null, Site? site = null, int? year = null, string name = "weather.csv") =>
        Read(Encoding.UTF8.GetBytes(text), options, site, year, name);

    public static WeatherRecord Read(byte[] bytes, WeatherOptions? options = null, Site? site = null, int? year = null, string name = "weather.csv")
    {
        var folder = Directory.CreateTempSubdirectory("canopysim-");
        try
        {
            var path = Path.Combine(folder.FullName, name);
            File.WriteAllBytes(path, bytes);
            return WeatherFile.Read(path, options ?? new WeatherOptions { File = name }, site ?? Seattle, year);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    public static string Message(string text, WeatherOptions? options = null) => Message(Encoding.UTF8.GetBytes(text), options);

    public static string Message(byte[] bytes, WeatherOptions? options = null)
    {
        var message = Xunit.Assert.Throws<InputError>(() => Read(bytes, options)).Message;
        Xunit.Assert.DoesNotContain('\n', message);
        return message[message.IndexOf("weather.csv", StringComparison.Ordinal)..];
    }

    /// <summary>A row of EPW; NaN writes the code for a missing value.</summary>
    public static string EpwRow(int year, int month, int day, int hour, double temperature = 10, double dewPoint = 5, double wind = 2, double rain = 999) =>
        string.Create(CultureInfo.InvariantCulture,
            $"{year},{month},{day},{hour},60,A7,{(double.IsNaN(temperature) ? 99.9 : temperature)},{dewPoint},80,101325,0,0,300,{hour * 10},{hour * 5},{hour * 3},0,0,0,0,180,{wind},5,5,20.0,77777,9,999999999,10,0.1,0,88,0.2,{rain},0\n");

    /// <summary>A whole year by hours, the year of each month by a function.</summary>
    public static string EpwYear(Func<int, int> yearOfMonth)
    {
        var text = new StringBuilder(EpwHeader.ReplaceLineEndings("\n"));
        for (var month = 1; month <= 12; month++)
            for (var day = 1; day <= DateTime.DaysInMonth(2015, month); day++)
                for (var hour = 1; hour <= 24; hour++)
                    text.Append(EpwRow(yearOfMonth(month), month, day, hour, temperature: month + (hour / 100.0), dewPoint: 0));
        return text.ToString();
    }
}
