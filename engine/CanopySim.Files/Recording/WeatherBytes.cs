using CanopySim.Weather;

namespace CanopySim.Files.Recording;

/// <summary>Weather in bytes, by hour, as exact as it was.</summary>
internal static class WeatherBytes
{
    private const int HoursOfDay = 24;

    public static void Write(BinaryWriter writer, IReadOnlyList<WeatherDay> days)
    {
        writer.Write(days.Count);
        foreach (var day in days)
        {
            writer.Write(day.Date.DayNumber);
            foreach (var hour in day.Hours)
            {
                writer.Write(hour.AirTemperatureCelsius);
                writer.Write(hour.VaporPressure);
                writer.Write(hour.AirPressure);
                writer.Write(hour.WindSpeed);
                writer.Write(hour.Rain);
                writer.Write(hour.GlobalHorizontalIrradiance);
                writer.Write(hour.DirectNormalIrradiance);
                writer.Write(hour.DiffuseHorizontalIrradiance);
            }
        }
    }

    public static IReadOnlyList<WeatherDay> Read(BinaryReader reader)
    {
        var days = new WeatherDay[ByteCounts.Read(reader)];
        for (var i = 0; i < days.Length; i++)
        {
            var date = reader.ReadInt32();
            if (date < 0 || date > DateOnly.MaxValue.DayNumber) throw new InvalidDataException("a date is out of range");
            var hours = new WeatherHour[HoursOfDay];
            for (var hour = 0; hour < HoursOfDay; hour++)
            {
                hours[hour] = new WeatherHour(
                    reader.ReadDouble(), reader.ReadDouble(), reader.ReadDouble(), reader.ReadDouble(), reader.ReadDouble(),
                    reader.ReadDouble(), reader.ReadDouble(), reader.ReadDouble());
            }

            days[i] = new WeatherDay { Date = DateOnly.FromDayNumber(date), Hours = hours };
        }

        return days;
    }
}
