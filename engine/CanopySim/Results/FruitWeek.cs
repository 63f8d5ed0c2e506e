using CanopySim.Assessment;
using CanopySim.Weather;

namespace CanopySim.Results;

/// <summary>The course of the hours on each side's fruit, mean over the days of each week from bloom.</summary>
internal sealed class FruitWeek
{
    private const int Days = 7;

    private readonly List<FruitLightHourRow> _rows = [];
    private readonly SortedDictionary<(int Wall, bool IsRight, int Hour), Sum> _sums = [];
    private DateOnly _from;
    private DateOnly _to;
    private int _number = -1;

    public void Add(WeatherDay weather, FruitHours hours, DateOnly bloom)
    {
        var number = (weather.Date.DayNumber - bloom.DayNumber) / Days;
        if (number != _number)
        {
            Close();
            (_number, _from) = (number, weather.Date);
        }

        _to = weather.Date;
        for (var side = 0; side < hours.Clusters.Sides.Count; side++)
        {
            var at = hours.Clusters.Sides[side];
            for (var hour = 0; hour < weather.Hours.Count; hour++)
            {
                var key = (at.Wall, at.IsRight, hour);
                if (!_sums.TryGetValue(key, out var sum)) _sums[key] = sum = new Sum(at);
                sum.Add(hours.At(side, hour), hours.IncidentPpfd[hour], weather.Hours[hour].AirTemperatureCelsius);
            }
        }
    }

    /// <summary>All weeks, the last one as far as it came.</summary>
    public IReadOnlyList<FruitLightHourRow> Finish()
    {
        Close();
        return _rows;
    }

    // Dark hours are left out: nothing falls on the fruit, and it is as warm as the air.
    private void Close()
    {
        foreach (var ((_, _, hour), sum) in _sums)
            if (sum.Incident > 0) _rows.Add(sum.Row(_from, _to, hour));
        _sums.Clear();
    }

    private sealed class Sum(FruitSide side)
    {
        private int _days;
        private double _ppfd, _sunlit, _air, _surface;

        public double Incident { get; private set; }

        public void Add(in FruitHour of, double incident, double air)
        {
            _days++;
            _ppfd += of.Ppfd;
            Incident += incident;
            _sunlit += of.SunlitShare;
            _air += air;
            _surface += of.SurfaceTemperature;
        }

        public FruitLightHourRow Row(DateOnly from, DateOnly to, int hour) => new(
            from, to, hour, side, _ppfd / _days, Incident / _days, _sunlit / _days, _air / _days, _surface / _days);
    }
}
