using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>Primary leaves that unfolded in April, from a season whose leaves were listed again and again.</summary>
internal sealed class AprilLeaves
{
    private readonly IReadOnlyList<LeafRow> _lastSeen;
    private readonly DateOnly _lastList;
    private readonly DateOnly _endOfSeptember;

    public AprilLeaves(SeasonResult season, int year)
    {
        _endOfSeptember = new DateOnly(year, 9, 30);
        _lastList = season.Leaves.Count > 0 ? season.Leaves.Max(leaf => leaf.Date) : DateOnly.MinValue;
        _lastSeen =
        [
            .. season.Leaves.Where(leaf => leaf.Order == 1 && leaf.UnfoldedOn.Month == 4)
                .GroupBy(leaf => leaf.LeafId)
                .Select(leaf => leaf.MaxBy(row => row.Date)!),
        ];
    }

    /// <summary>Median age at which they were last seen [d]; a leaf that hung to the end counts with its age then. Null without leaves.</summary>
    public double? MedianLife
    {
        get
        {
            if (_lastSeen.Count == 0) return null;
            var lives = _lastSeen.Select(leaf => (double)leaf.AgeD).Order().ToList();
            return (lives[(lives.Count - 1) / 2] + lives[lives.Count / 2]) / 2;
        }
    }

    /// <summary>Share of their full-grown area that is gone by the end of September [0 to 1]; null where the season ended before.</summary>
    public double? ShareSpentBySeptember => _lastSeen.Count == 0 || _lastList < _endOfSeptember.AddDays(-3)
        ? null
        : _lastSeen.Where(leaf => leaf.Date < _endOfSeptember.AddDays(-3)).Sum(leaf => leaf.AreaCm2) / _lastSeen.Sum(leaf => leaf.AreaCm2);
}
