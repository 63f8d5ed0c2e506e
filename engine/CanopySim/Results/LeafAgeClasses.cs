using CanopySim.Photosynthesis;

namespace CanopySim.Results;

/// <summary>Leaves of a day by ten-day classes of age.</summary>
internal static class LeafAgeClasses
{
    public const int Width = 10;

    /// <summary>A row for each class that has unfolded leaves, youngest first; all per vine.</summary>
    public static IEnumerable<LeafAgeRow> Of(DateOnly date, IReadOnlyList<LeafDay> leaves, double vines)
    {
        var classes = new List<Sums>();
        foreach (var leaf in leaves)
        {
            if (!leaf.Leaf.HasUnfolded) continue;
            var number = leaf.Leaf.AgeDays / Width;
            while (classes.Count <= number) classes.Add(new Sums());
            classes[number].Add(leaf);
        }

        for (var number = 0; number < classes.Count; number++)
        {
            var sums = classes[number];
            if (sums.Leaves == 0) continue;
            yield return new LeafAgeRow(
                date,
                number * Width,
                (number + 1) * Width,
                sums.Area / vines,
                sums.AbsorbedParMoles / vines,
                sums.NetAssimilationGrams / vines,
                sums.AreaTimesEfficiency / sums.Area);
        }
    }

    private sealed class Sums
    {
        public int Leaves { get; private set; }

        public double Area { get; private set; }

        public double AbsorbedParMoles { get; private set; }

        public double NetAssimilationGrams { get; private set; }

        public double AreaTimesEfficiency { get; private set; }

        public void Add(in LeafDay leaf)
        {
            Leaves++;
            Area += leaf.Area;
            AbsorbedParMoles += leaf.AbsorbedParMoles;
            NetAssimilationGrams += leaf.NetAssimilationGrams;
            AreaTimesEfficiency += leaf.Area * leaf.Efficiency;
        }
    }
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
