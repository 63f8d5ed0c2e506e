using CanopySim.Growth;
using CanopySim.Light;
using CanopySim.Photosynthesis;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>
/// One canopy as it stands on two days of ripening, lit once, its leaves assimilating by one curve of leaf age or another: what a
/// curve alone does, without another growth behind it. Water is ample.
/// </summary>
internal sealed class RipeningCanopies
{
    private const int HalfClass = 10;

    private static readonly (int Month, int Day)[] Days = [(8, 15), (9, 5)];

    private readonly PreparedSeason _season;
    private readonly List<(DateOnly Day, LightOfDay Light, double[] Supply)> _lit = [];

    public RipeningCanopies(ValidationSeasons seasons, SeasonCase season)
    {
        _season = seasons.Prepared(season);
        foreach (var (month, number) in Days)
        {
            var day = new DateOnly(_season.Year, month, number);
            var canopy = seasons.CanopyOn(season, day);
            var light = new CanopyLight(_season.Scenario, Quality.Draft, _season.UtcOffsetHours, threads: 1);
            light.Place(canopy, changed: true);
            var weather = _season.Weather.Days.First(candidate => candidate.Date == day);
            _lit.Add((day, light.Solve(weather), [.. canopy.Vines.Select(vine => vine.Carbon.SupplyIndex)]));
        }
    }

    /// <summary>Share of net carbon over share of area of the leaves about each age [d], by a curve.</summary>
    public double[] CarbonOverArea(LeafAgeCurve curve, IReadOnlyList<int> ages)
    {
        var gas = new CanopyGasExchange(_season.Scenario with { LeafAge = curve }, threads: 1);
        var leaves = _lit.SelectMany(lit => gas.Day(lit.Light, _season.Weather.Days.First(day => day.Date == lit.Day), stomatalWater: 1, lit.Supply)).ToList();
        var (carbon, area) = (leaves.Sum(leaf => leaf.NetAssimilationGrams), leaves.Sum(leaf => leaf.Area));
        return
        [
            .. ages.Select(age =>
            {
                var about = leaves.Where(leaf => leaf.Leaf.AgeDays >= age - HalfClass && leaf.Leaf.AgeDays < age + HalfClass).ToList();
                return about.Sum(leaf => leaf.NetAssimilationGrams) / carbon / (about.Sum(leaf => leaf.Area) / area);
            }),
        ];
    }
}
