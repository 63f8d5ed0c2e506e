using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>
/// Sugar on the last day of several seasons against their leaf area at veraison over the crop of that day.
/// </summary>
internal sealed class SugarCurve
{
    /// <summary>Share of the highest sugar that counts as all of it.</summary>
    public const double FullSugarShare = 0.95;

    private readonly List<(double LeafArea, double Brix)> _points;

    public SugarCurve(IEnumerable<SeasonResult> seasons) =>
        _points = [.. seasons.Select(Point).OrderBy(point => point.LeafArea)];

    /// <summary>
    /// Leaf area over fruit [m²/kg] at which sugar comes to 95 % of the highest; null where even the least leaf area
    /// reaches it.
    /// </summary>
    public double? FullSugar => LeafAreaFor(FullSugarShare * _points.Max(point => point.Brix));

    /// <summary>
    /// Leaf area over fruit [m²/kg] at which so much sugar [Brix] is reached, straight between two points; null where
    /// none of them is on either side.
    /// </summary>
    public double? LeafAreaFor(double brix)
    {
        for (var i = 1; i < _points.Count; i++)
        {
            var (low, high) = (_points[i - 1], _points[i]);
            if (low.Brix >= brix || high.Brix < brix) continue;
            return low.LeafArea + ((high.LeafArea - low.LeafArea) * (brix - low.Brix) / (high.Brix - low.Brix));
        }

        return null;
    }

    /// <summary>Sugar at a leaf area over fruit [Brix], straight between two points; null beyond them.</summary>
    public double? BrixAt(double leafArea)
    {
        for (var i = 1; i < _points.Count; i++)
        {
            var (low, high) = (_points[i - 1], _points[i]);
            if (leafArea < low.LeafArea || leafArea > high.LeafArea) continue;
            return low.Brix + ((high.Brix - low.Brix) * (leafArea - low.LeafArea) / (high.LeafArea - low.LeafArea));
        }

        return null;
    }

    /// <summary>Least rise of sugar from a point to the next one with more leaf [Brix].</summary>
    public double LeastStep => Enumerable.Range(1, _points.Count - 1).Min(i => _points[i].Brix - _points[i - 1].Brix);

    public double FirstSlope => Slope(0);

    public double LastSlope => Slope(_points.Count - 2);

    /// <summary>
    /// Of one season. A crop that never came to veraison has its leaf area of the last day, and no sugar.
    /// </summary>
    public static (double LeafArea, double Brix) Point(SeasonResult season)
    {
        var area = season.Summary.Canopy?.LeafAreaM2PerVine ?? season.Days[^1].LeafAreaM2PerVine;
        return (area / (season.Summary.Harvest?.YieldKgPerVine ?? double.NaN), season.Days[^1].SugarBrix ?? 0);
    }

    private double Slope(int from) =>
        (_points[from + 1].Brix - _points[from].Brix) / (_points[from + 1].LeafArea - _points[from].LeafArea);
}
