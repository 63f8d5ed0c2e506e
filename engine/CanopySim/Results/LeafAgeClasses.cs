using CanopySim.Photosynthesis;

namespace CanopySim.Results;

/// <summary>Leaves of a day by ten-day classes of age.</summary>
internal static class LeafAgeClasses
{
    public const int Width = 10;

    public static IEnumerable<LeafAgeRow> Of(DateOnly date, IReadOnlyList<LeafDay> leaves, double vines) =>
        leaves.Where(leaf => leaf.Leaf.HasUnfolded)
            .GroupBy(leaf => leaf.Leaf.AgeDays / Width)
            .OrderBy(group => group.Key)
            .Select(group =>
            {
                var area = group.Sum(leaf => leaf.Area);
                return new LeafAgeRow(
                    date,
                    group.Key * Width,
                    (group.Key + 1) * Width,
                    area / vines,
                    group.Sum(leaf => leaf.AbsorbedParMoles) / vines,
                    group.Sum(leaf => leaf.NetAssimilationGrams) / vines,
                    group.Sum(leaf => leaf.Area * leaf.Efficiency) / area);
            });
}

/// <summary>Which leaves gained the carbon of the ripening weeks, by age, and what they could send to the fruit.</summary>
internal sealed class RipeningCarbon
{
    private readonly SortedDictionary<int, double> _byClass = [];
    private readonly List<double> _capacity = [];

    /// <summary>Mean ripening capacity [g kg⁻¹ d⁻¹]; null before ripening.</summary>
    public double? MeanCapacity => _capacity.Count > 0 ? _capacity.Average() : null;

    public void Add(IReadOnlyList<LeafDay> leaves, double? capacity)
    {
        if (capacity is { } value) _capacity.Add(value);
        foreach (var leaf in leaves)
        {
            if (!leaf.Leaf.HasUnfolded) continue;
            var key = leaf.Leaf.AgeDays / LeafAgeClasses.Width;
            _byClass[key] = _byClass.GetValueOrDefault(key) + leaf.NetAssimilationGrams;
        }
    }

    /// <summary>Shares by class of age; empty before veraison or where the leaves gained nothing.</summary>
    public IReadOnlyList<LeafAgeShare> Shares()
    {
        var total = _byClass.Values.Sum();
        if (total <= 0) return [];
        return [.. _byClass.Select(pair => new LeafAgeShare(pair.Key * LeafAgeClasses.Width, (pair.Key + 1) * LeafAgeClasses.Width, pair.Value / total))];
    }
}
