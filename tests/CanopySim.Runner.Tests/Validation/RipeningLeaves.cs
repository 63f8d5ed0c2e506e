using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>Which leaves gained the carbon of the weeks from veraison to the target sugar, or to the end where that was not reached.</summary>
internal sealed class RipeningLeaves
{
    private readonly IReadOnlyList<LeafAgeRow> _rows;
    private readonly double _carbon;
    private readonly double _area;

    public RipeningLeaves(SeasonResult season)
    {
        var dates = season.Summary.Dates;
        var to = dates.TargetSugar ?? dates.End;
        _rows = dates.Veraison is { } from ? [.. season.LeafAges.Where(row => row.Date >= from && row.Date <= to)] : [];
        (_carbon, _area) = (_rows.Sum(row => row.NetAssimilationGCo2PerVine), _rows.Sum(row => row.LeafAreaM2PerVine));
    }

    /// <summary>Mean age of leaves, weighted by what they gained [d]; null before veraison.</summary>
    public double? MeanAge => _rows.Count > 0
        ? _rows.Sum(row => row.NetAssimilationGCo2PerVine * (row.AgeFromD + row.AgeToD) / 2) / _carbon
        : null;

    /// <summary>Share of the gain of leaves from one age to another [0 to 1]; ends at whole tens of days.</summary>
    public double? CarbonShare(int from, int to) => _rows.Count > 0 ? Of(from, to).Sum(row => row.NetAssimilationGCo2PerVine) / _carbon : null;

    /// <summary>Share of the gain over share of the leaf area; null where no such leaves hang.</summary>
    public double? CarbonOverArea(int from, int to)
    {
        var area = Of(from, to).Sum(row => row.LeafAreaM2PerVine);
        return area > 0 ? CarbonShare(from, to) / (area / _area) : null;
    }

    private IEnumerable<LeafAgeRow> Of(int from, int to) => _rows.Where(row => row.AgeFromD >= from && row.AgeToD <= to);
}
