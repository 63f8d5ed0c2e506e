using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.Plants;
using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Assessment;

/// <summary>
/// Light and warmth of the renewal zone while the buds at the shoots' bases lay down next year's clusters, and how
/// fruitful they will be against the best. On each day a shoot's factor is min(1, PAR / full light) × warmth; a bud
/// takes it with a weight that is one when its node unfolds and falls in a straight line to none when ten more nodes
/// have unfolded above it (about three weeks where it is warm) or, on shoots that stopped or were cut, after six weeks.
/// PAR is what falls on both sides of the shoot's own leaves on its lowest ten nodes, per area of blade (a level blade
/// in the open reads full sun), mean over the four hours about the sun's highest, when such light is measured in the
/// field: light of the single bud does not predict its clusters, the shoot's does (Sanchez &amp; Dokoozlian 2005).
/// Warmth is the mean of the four warmest hours: the daily maximum held some four hours counts (Buttrose 1969). The
/// rule itself is derived from these, and not tested as a whole.
/// </summary>
public sealed class BudFruitfulness(FruitfulnessParameters parameters, Optics optics)
{
    // Hours of light and of warmth in a day.
    private const int HoursOfDay = 4;

    // Twice the three weeks that a bud takes in the warmth (Buttrose 1969): buds of shoots that add no more nodes are
    // done by then. Assumed.
    private const int LongestDays = 42;

    private readonly Dictionary<int, Record> _records = [];

    /// <summary>Adds a day.</summary>
    public void Add(Canopy canopy, LightOfDay light, WeatherDay weather)
    {
        Dictionary<int, (double Ppfd, double Area)>? onShoots = null;
        var warmth = Warmth(weather);
        foreach (var shoot in canopy.PrimaryShoots())
        {
            if (!_records.TryGetValue(shoot.Id.Value, out var record))
                _records[shoot.Id.Value] = record = new Record(parameters.RenewalNodes);
            var weight = record.Weigh(shoot, weather.Date, parameters.SensitiveNodes);
            if (weight <= 0) continue;
            onShoots ??= OnShoots(light);
            if (!onShoots.TryGetValue(shoot.Id.Value, out var there) || there.Area <= 0) continue;
            var ppfd = there.Ppfd / there.Area;
            record.Take(weight, ppfd, Math.Min(1, ppfd / parameters.FullLight), warmth, weather.Date);
        }
    }

    /// <summary>
    /// Expected fruitfulness of the shoots that stand; null where none laid down clusters in the light.
    /// </summary>
    public NextYearSummary? Of(Canopy canopy)
    {
        var records = canopy.PrimaryShoots()
            .Select(shoot => _records.GetValueOrDefault(shoot.Id.Value))
            .OfType<Record>().Where(record => record.Weight > 0).ToList();
        if (records.Count == 0) return null;
        var shares = records.Select(record => record.Factor / record.Weight).Order().ToList();
        var mean = shares.Average();
        return new NextYearSummary
        {
            Fruitfulness = mean,
            Spread = shares.Count > 1
            ? Math.Sqrt(shares.Sum(share => (share - mean) * (share - mean)) / (shares.Count - 1)) : 0,
            Least = shares[0],
            Most = shares[^1],
            Shoots = records.Count,
            LightFactor = records.Average(record => record.LightFactor / record.Weight),
            TemperatureFactor = records.Average(record => record.Warmth / record.Weight),
            ParUmolM2S = records.Average(record => record.Ppfd / record.Weight),
            From = records.Min(record => record.From),
            To = records.Max(record => record.To),
        };
    }

    /// <summary>Factor of warmth [0 to 1] of a day.</summary>
    public double Warmth(WeatherDay weather)
    {
        var warmest = weather.Hours.Select(hour => hour.AirTemperatureCelsius).OrderDescending().Take(HoursOfDay)
            .Average();
        var range = parameters.FullTemperature - parameters.BarrenTemperature;
        return range > 0 ? Math.Clamp((warmest - parameters.BarrenTemperature) / range, 0, 1)
            : warmest > parameters.BarrenTemperature ? 1 : 0;
    }

    // PAR on the renewal zone of each shoot, times area [µmol s⁻¹], and that area [m²].
    private Dictionary<int, (double Ppfd, double Area)> OnShoots(LightOfDay light)
    {
        var absorptance = 1 - optics.LeafParReflectance - optics.LeafParTransmittance;
        var sums = new Dictionary<int, (double Ppfd, double Area)>();
        if (absorptance <= 0) return sums;
        var hours = Enumerable.Range(0, light.Hours.Count)
            .OrderByDescending(hour => light.Incident[hour].SunDirection?.Z ?? 0).Take(HoursOfDay).ToArray();
        for (var surface = 0; surface < light.Canopy.Leaves.Count; surface++)
        {
            if (light.Canopy.Leaves[surface] is not { } leaf || leaf.Shoot.Order != 1
                || leaf.Rank > parameters.RenewalNodes) continue;
            var watts = 0.0;
            foreach (var hour in hours) watts += light.Solution.AbsorbedPar[light.Solution.IndexOf(hour, surface)];
            var (ppfd, area) = sums.GetValueOrDefault(leaf.Shoot.Id.Value);
            sums[leaf.Shoot.Id.Value] = (
                ppfd + (watts * UnitConversion.MicromolesPerJouleOfDaylightPar / absorptance / HoursOfDay),
                area + light.Canopy.Areas[surface]);
        }

        return sums;
    }

    /// <summary>What a shoot's buds have taken, weighted.</summary>
    private sealed class Record(int nodes)
    {
        private readonly DateOnly?[] _unfolded = new DateOnly?[nodes];

        public double Weight { get; private set; }

        public double Factor { get; private set; }

        public double LightFactor { get; private set; }

        public double Warmth { get; private set; }

        public double Ppfd { get; private set; }

        public DateOnly From { get; private set; } = DateOnly.MaxValue;

        public DateOnly To { get; private set; } = DateOnly.MinValue;

        public double Weigh(Shoot shoot, DateOnly date, int sensitive)
        {
            var weight = 0.0;
            for (var rank = 1; rank <= Math.Min(_unfolded.Length, shoot.UnfoldedNodes); rank++)
            {
                var days = date.DayNumber - (_unfolded[rank - 1] ??= date).DayNumber;
                if (days < LongestDays) weight += Math.Max(0, 1 - ((shoot.UnfoldedNodes - rank) / (double)sensitive));
            }

            return weight;
        }

        public void Take(double weight, double ppfd, double lightFactor, double warmth, DateOnly date)
        {
            Weight += weight;
            Factor += weight * lightFactor * warmth;
            LightFactor += weight * lightFactor;
            Warmth += weight * warmth;
            Ppfd += weight * ppfd;
            if (date < From) From = date;
            To = date;
        }
    }
}
