using CanopySim.Weather;
using Xunit;

namespace CanopySim.Files.Tests.Weather;

public sealed class CsvWeatherTest
{
    private static readonly WeatherOptions Filling = new() { File = "weather.csv", FillGaps = true };

    // Forty days of the daily record of Seattle of the US National Oceanic and Atmospheric Administration (public domain), as the
    // npm package vega-datasets carries it (seattle-weather.csv). Numbers below are read off the file.
    [Fact]
    public void ReadsARealRecord()
    {
        var record = TestWeather.Read(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Weather", "seattle-days.csv")));
        Assert.Equal(new DateOnly(2012, 1, 1), record.FirstDay);
        Assert.Equal((40, 0, 0), (record.DayCount, record.Hours.Count, record.FilledGaps));
        Assert.Equal(new DailyReading(2.8, 10.6, null, null, 10.9, 4.5), record.Days[1]);
    }

    [Theory]
    [InlineData("date,tmin_c,tmax_c,rain_mm,wind_m_s,solar MJ/m2")]
    [InlineData("Date;T min [°C];T max [°C];Rain [mm];Wind speed [m/s];Global radiation [MJ m-2 d-1]")]
    [InlineData("day\tTempMin\tTempMax\tprecip\tws\tsrad")]
    [InlineData("\"DATE\",\"minimum temperature\",\"maximum temperature\",\"rainfall (mm)\",\"u2\",\"Rs [MJ/m²/day]\"")]
    [InlineData("date,tn,tx,PRCP,wind_speed_m_s-1,solar_radiation_mj_m2_d")]
    public void RecognisesHeaders(string header)
    {
        var separator = header.Contains(';') ? ';' : header.Contains('\t') ? '\t' : ',';
        var record = TestWeather.Read($"{header}\n2014/04/01,5,15,1.5,3,20".Replace(',', separator));
        Assert.Equal(new DailyReading(5, 15, null, 20, 1.5, 3), record.Days[0]);
    }

    [Fact]
    public void TurnsUnitsIntoTheEnginesOwn()
    {
        var day = TestWeather.Read("date,tmin_f,tmax (°F),rain [in],wind mph,solar [W/m2],rh_%\n20140401,41,59,1,10,100,50\n").Days[0];
        Assert.Equal(5, day.MinimumTemperatureCelsius, 12);
        Assert.Equal(15, day.MaximumTemperatureCelsius, 12);
        Assert.Equal(25.4, day.Rain!.Value, 12);
        // 1 mph = 0.44704 m/s (exact); 100 W/m² through a day = 8.64 MJ/m².
        Assert.Equal(4.4704, day.WindSpeed!.Value, 12);
        Assert.Equal(8.64, day.GlobalRadiation!.Value, 12);
        // FAO-56 Eq. 19: half the mean of saturation at 5 and 15 °C, which its Table 2.3 prints as 0.872 and 1.705 kPa.
        Assert.Equal(0.5 * (0.872 + 1.705) / 2, day.VaporPressure!.Value, 3);
    }

    [Fact]
    public void TakesDewPointBeforeHumidity()
    {
        // FAO-56 Table 2.3: saturation at 10 °C is 1.228 kPa.
        var day = TestWeather.Read("date,tmin,tmax,rh,dew_point\n2014-04-01,5,15,99,10\n").Days[0];
        Assert.Equal(1.228, day.VaporPressure!.Value, 3);
    }

    [Fact]
    public void MapsColumnsByTheScenario()
    {
        var options = new WeatherOptions
        {
            File = "weather.csv",
            Columns = new Dictionary<string, string> { ["date"] = "when", ["minimum_temperature"] = "low [degF]", ["maximum_temperature"] = "high [degF]", ["rain"] = "gauge B" },
        };
        var day = TestWeather.Read("when,low,high,rain,gauge B,note\n2014-04-01,41,59,9,2,dry\n", options).Days[0];
        Assert.Equal((5, 2), (Math.Round(day.MinimumTemperatureCelsius, 10), day.Rain));
    }

    [Fact]
    public void IgnoresWhatIsNoQuantityOfOurs()
    {
        var record = TestWeather.Read("date,tmin,tmax,tmean,weather,wind direction,station\n2014-04-01,5,15,10,fog,270,S1\n");
        Assert.Equal(new DailyReading(5, 15, null, null, null, null), record.Days[0]);
    }

    [Fact]
    public void LeapDaysAreDays()
    {
        var record = TestWeather.Read("date,tmin,tmax\n2016-02-28,1,2\n2016-02-29,3,4\n2016-03-01,5,6\n");
        Assert.Equal(3, record.Days[1].MinimumTemperatureCelsius);
        Assert.Contains("1 day missing before 2016-03-01", TestWeather.Message("date,tmin,tmax\n2016-02-28,1,2\n2016-03-01,5,6\n"));
    }

    [Fact]
    public void FillsGapsOfDaysInALine()
    {
        var record = TestWeather.Read("date,tmin,tmax,rain,wind\n2014-04-01,0,10,5,2\n2014-04-02,2,12,,\n2014-04-05,8,18,5,6\n", Filling);
        Assert.Equal(5, record.DayCount);
        Assert.Equal(3, record.FilledGaps);
        // Three steps from 2 to 8 °C; four from 2 to 6 m/s; no rain where nobody looked.
        Assert.Equal([0, 2, 4, 6, 8], record.Days.Select(day => day.MinimumTemperatureCelsius));
        Assert.Equal([2, 3, 4, 5, 6], record.Days.Select(day => day.WindSpeed!.Value));
        Assert.Equal([5, 0, 0, 0, 5], record.Days.Select(day => day.Rain!.Value));
    }

    [Fact]
    public void FillsTenDaysAndNoMore()
    {
        Assert.Equal(10, TestWeather.Read("date,tmin,tmax\n2014-04-01,0,10\n2014-04-12,8,18\n", Filling).FilledGaps);
        Assert.Contains("11 days missing", TestWeather.Message("date,tmin,tmax\n2014-04-01,0,10\n2014-04-13,8,18\n", Filling));
    }

    [Fact]
    public void HoursBecomeWholeDays()
    {
        var text = "time,temp,pressure,ghi\n" + string.Concat(Hours(new DateTime(2014, 4, 1, 20, 0, 0), 24 + 24 + 4 + 6).Select(time => $"{time:yyyy-MM-ddTHH:mm},{time.Hour},1013.25,{time.Hour}\n"));
        var record = TestWeather.Read(text);
        Assert.Equal((new DateOnly(2014, 4, 2), 48, 2), (record.FirstDay, record.Hours.Count, record.DayCount));
        Assert.Equal(0, record.Hours[0].AirTemperatureCelsius);
        Assert.Equal(101.325, record.Hours[0].AirPressure!.Value, 10);
    }

    [Fact]
    public void AnHourMayNameItsEnd()
    {
        var text = "time,temp\n" + string.Concat(Hours(new DateTime(2014, 4, 1, 1, 0, 0), 24).Select(time => $"{time:yyyy/MM/dd HH:mm:ss},{time.Hour}\n"));
        var record = TestWeather.Read(text, new WeatherOptions { File = "weather.csv", HourStamp = HourStamp.End });
        Assert.Equal((new DateOnly(2014, 4, 1), 24), (record.FirstDay, record.Hours.Count));
        Assert.Equal(1, record.Hours[0].AirTemperatureCelsius);
        Assert.Throws<InputError>(() => TestWeather.Read(text));
    }

    [Fact]
    public void UniversalTimeIsBroughtToTheSite()
    {
        var text = "time,temp\n" + string.Concat(Hours(new DateTime(2014, 4, 1, 8, 0, 0), 24).Select(time => $"{time:yyyy-MM-ddTHH:mm}Z,{time.Hour}\n"));
        var record = TestWeather.Read(text);
        Assert.Equal(new DateOnly(2014, 4, 1), record.FirstDay);
        Assert.Equal(8, record.Hours[0].AirTemperatureCelsius);
    }

    [Fact]
    public void FillsHoursByTheSameHourOfOtherDays()
    {
        var text = "time,temp,ghi\n" + string.Concat(Hours(new DateTime(2014, 4, 1), 72)
            .Where(time => time.Day != 2 || time.Hour is < 6 or > 12)
            .Select(time => $"{time:yyyy-MM-ddTHH:mm},{time.Hour + (10 * (time.Day - 1))},{(time.Hour is > 6 and < 18 ? 100 * time.Day : 0)}\n"));
        var record = TestWeather.Read(text, Filling);
        Assert.Equal((72, 7), (record.Hours.Count, record.FilledGaps));
        // Halfway between the same hours of the days before and after: the night stays dark.
        Assert.Equal((16, 0.0), (record.Hours[30].AirTemperatureCelsius, record.Hours[30].GlobalHorizontalIrradiance));
        Assert.Equal((20, 200.0), (record.Hours[34].AirTemperatureCelsius, record.Hours[34].GlobalHorizontalIrradiance));
    }

    [Fact]
    public void SensorsMayDriftALittle()
    {
        var record = TestWeather.Read("date,tmin,tmax,rh,solar\n2014-04-01,5,15,102,-0.2\n");
        Assert.Equal(0, record.Days[0].GlobalRadiation);
        Assert.Equal((0.872 + 1.705) / 2, record.Days[0].VaporPressure!.Value, 0.0005);
    }

    private static IEnumerable<DateTime> Hours(DateTime start, int count) => Enumerable.Range(0, count).Select(hour => start.AddHours(hour));
}
