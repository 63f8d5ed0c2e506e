using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>Rows that run north to south and rows that run east to west, under sun and under cloud.</summary>
internal sealed class RowDirection : Study
{
    private const string Smart = "Smart 1973, Am J Enol Vitic 24:141-147";

    // Opaque hedge 1.2 m high and 0.4 m wide, rows 2.5 m, 38.5° N, 21 June, direct light of a clear day: no leafy
    // hedge is further apart.
    // 0.493 over 0.271.
    private const double Opaque = 1.82;

    // A difference that no one would call one is left out.
    private static readonly Limit MoreInSun = new WithinRange(1.05, Opaque);

    private const int DaysOfAKind = 5;

    private static readonly (int Month, int Day) From = (6, 15);
    private static readonly (int Month, int Day) To = (7, 15);

    private static readonly SeasonCase EastWest = SeasonCatalogue.Valley(
        "hedge, rows east to west", scenario => scenario with { Rows = scenario.Rows with { Azimuth = 90 } }, (7, 31),
            work: 27 * 5);

    public override string Title => "Row direction";

    public override string Done =>
        "The hedge of `warm-valley` (38.4° N, rows 3.0 m) in its first generated weather, rows north to south as "
        + "shipped and east to west, each grown in its own light. Share of the PAR that falls on the ground's plane "
        + "which vines absorb, on the five days from 15 June to 15 July with the highest and the lowest share of "
        + "direct light.";

    public override IReadOnlyList<SeasonCase> Seasons => [SeasonCatalogue.Hedges[0], EastWest];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var prepared = seasons.Prepared(EastWest);
        var from = new DateOnly(prepared.Year, From.Month, From.Day);
        var to = new DateOnly(prepared.Year, To.Month, To.Day);
        var byDirect = prepared.Weather.Days.Where(day => day.Date >= from && day.Date <= to)
            .OrderByDescending(DirectShare).ToList();
        var (clear, cloudy) = (byDirect[..DaysOfAKind], byDirect[^DaysOfAKind..]);
        var (northSouth, eastWest) = (seasons.Of(SeasonCatalogue.Hedges[0]), seasons.Of(EastWest));
        double? inSun = Absorbed(northSouth, clear) / Absorbed(eastWest, clear);
        double? underCloud = Absorbed(northSouth, cloudy) / Absorbed(eastWest, cloudy);
        return new StudyResult(
            Finding.Judged(
                "light absorbed on clear days, north-south over east-west [1]", Standing.Predicted, MoreInSun,
                $"{Smart}; derived: the upper end is an opaque hedge's, 0.493 over 0.271", inSun) with
            {
                Published = "more, and less than 1.82",
                Note = $"absorbed {Say(Absorbed(northSouth, clear))} and {Say(Absorbed(eastWest, clear))}, direct "
                    + $"share {Say(clear.Average(DirectShare))}; "
                    + $"leaf area on 1 July {Say(LeafArea(northSouth, prepared.Year))} and "
                    + $"{Say(LeafArea(eastWest, prepared.Year))} m² a vine",
            },
            Finding.Judged(
                "the same, cloudy / clear days [1]", Standing.Predicted, new Rising("cloud cuts the advantage"), Smart,
                    underCloud, inSun) with
            {
                Note = $"cloudy days: absorbed {Say(Absorbed(northSouth, cloudy))} and "
                    + $"{Say(Absorbed(eastWest, cloudy))}, "
                    + $"direct share {Say(cloudy.Average(DirectShare))}",
            });
    }

    private static double DirectShare(WeatherDay day)
    {
        var global = day.Hours.Sum(hour => hour.GlobalHorizontalIrradiance);
        return global > 0 ? 1 - (day.Hours.Sum(hour => hour.DiffuseHorizontalIrradiance) / global) : 0;
    }

    private static double Absorbed(SeasonResult season, List<WeatherDay> days) =>
        days.Average(day => season.On(day.Date)?.FractionParAbsorbed ?? double.NaN);

    private static double LeafArea(SeasonResult season, int year) =>
        season.On(new DateOnly(year, 7, 1))?.LeafAreaM2PerVine ?? double.NaN;

    private static string Say(double value) => NumberSay.Number(value);
}
