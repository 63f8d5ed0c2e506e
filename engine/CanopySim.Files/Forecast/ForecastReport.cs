using CanopySim.Files.Notes;
using CanopySim.Fitting;
using CanopySim.Numerics;

namespace CanopySim.Files.Forecast;

/// <summary>What was noted of one thing on one day, and what the vines show of it.</summary>
/// <param name="Effect">What the vines show of it.</param>
/// <param name="Notes">The lines of the sheet behind it.</param>
public sealed record NotedEffect(ObservationEffect Effect, IReadOnlyList<FieldNote> Notes);

/// <summary>A forecast with all that its pages tell of.</summary>
/// <param name="Input">What it rests on.</param>
/// <param name="Forecast">What was made of it.</param>
public sealed record ForecastReport(ForecastInput Input, VineForecast Forecast)
{
    public Scenario Scenario => Input.Scenario;

    public DateOnly AsOf => Forecast.AsOf;

    public double TargetSugar => Scenario.Season.TargetSugar;

    /// <summary>The middle vine as it stands on the day.</summary>
    public StandingVine Standing { get; } =
        new(Forecast.Standing.Scenario, Forecast.Standing.Season, Input.Known, Forecast.AsOf);

    /// <summary>Last day that fans are told of: when nine tenths of the members are ripe, or the last of any.</summary>
    public DateOnly LastTold
    {
        get
        {
            var last = Forecast.Seasons.Where(season => season.Days.Count > 0).Select(season => season.Days[^1].Date)
                .DefaultIfEmpty(AsOf).Max();
            var ripe = Forecast.TargetSugar.P90?.AddDays(7);
            return ripe < last ? ripe.Value : last;
        }
    }

    /// <summary>Mean length of the shoots [cm].</summary>
    public IReadOnlyList<FanDay> ShootLength => Spread((season, date) => season.On(date)?.ShootLengthCm);

    /// <summary>Leaf area [m² a vine].</summary>
    public IReadOnlyList<FanDay> LeafArea => Spread((season, date) => season.On(date)?.LeafAreaM2PerVine);

    /// <summary>Sugar of the fruit [Brix], from the day on which all members have fruit that colors; ripe members stay at the target.</summary>
    public IReadOnlyList<FanDay> Sugar => Spread((season, date) => season.On(date)?.SugarBrix);

    /// <summary>Fridays from veraison on with the chance that the target is reached by then.</summary>
    public IReadOnlyList<(DateOnly Day, double Chance)> Chances
    {
        get
        {
            if (Forecast.Veraison.P10 is not { } from) return [];
            var days = new List<(DateOnly, double)>();
            for (var day = from > AsOf ? from : AsOf; day <= LastTold; day = day.AddDays(1))
            {
                if (day.DayOfWeek == DayOfWeek.Friday) days.Add((day, Forecast.ChanceBy(day)));
            }

            var first = days.FindLastIndex(each => each.Item2 == 0);
            return first > 0 ? days[first..] : days;
        }
    }

    /// <summary>Shares of the leaves' net carbon of the ripening weeks by class of leaf age, over the members that come to veraison.</summary>
    public IReadOnlyList<AgeOutlook> FeedingLeaves
    {
        get
        {
            var ripening = Forecast.Seasons.Select(season => season.Summary.RipeningCarbonByLeafAge).Where(shares => shares.Count > 0).ToList();
            return [.. ripening.SelectMany(shares => shares).Select(share => (share.FromD, share.ToD)).Distinct().Order().Select(Class)];

            // A vine that has no leaf of that age gets nothing of it.
            AgeOutlook Class((int From, int To) age)
            {
                var shares = ripening.Select(each => each.FirstOrDefault(share => share.FromD == age.From)?.Share ?? 0).Order().ToList();
                return new AgeOutlook(age.From, age.To, Quantile.Of(shares, 0.1), shares.Average(), Quantile.Of(shares, 0.9));
            }
        }
    }

    /// <summary>Notes that were left out because no vine of the ensemble comes near them.</summary>
    public IReadOnlyList<NotedEffect> Contradicting => [.. Effects(excluded: true)];

    /// <summary>Notes that moved the vines, those that narrowed them most first.</summary>
    public IReadOnlyList<NotedEffect> Telling =>
        [.. Effects(excluded: false).OrderByDescending(each => each.Effect.Narrowing)];

    /// <summary>A spread of what members have that have it at all, as low, middle and high: tenths from below.</summary>
    public (double P10, double P50, double P90)? Of(Func<AheadSeason, double?> value)
    {
        var values = Forecast.Seasons.Select(value).OfType<double>().Where(double.IsFinite).Order().ToList();
        return values.Count == 0 ? null
            : (Quantile.Of(values, 0.1), Quantile.Of(values, 0.5), Quantile.Of(values, 0.9));
    }

    private IEnumerable<NotedEffect> Effects(bool excluded) => Forecast.Fit.Effects
        .Select((effect, i) => new NotedEffect(effect, Input.Noted.NotesOf[i]))
        .Where(each => each.Effect.IsExcluded == excluded);

    private IReadOnlyList<FanDay> Spread(Func<AheadSeason, DateOnly, double?> value) =>
        Fan.Of(Forecast.Seasons, FirstTold, LastTold, value);

    private DateOnly FirstTold => Forecast.Seasons.Where(season => season.Days.Count > 0)
        .Select(season => season.Days[0].Date).DefaultIfEmpty(AsOf).Max();
}
