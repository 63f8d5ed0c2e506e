using CanopySim.Files.Charts;
using CanopySim.Results;

namespace CanopySim.Files.Report;

/// <summary>The season's numbers as rows of a report. What was not reached is a dash.</summary>
internal sealed class SeasonTables(SeasonResult season, Scenario scenario, Units units)
{
    private const string None = "–";

    private readonly SeasonSummary _summary = season.Summary;

    public IEnumerable<IReadOnlyList<string>> Stages()
    {
        var (dates, published) = (_summary.Dates, _summary.PublishedSums);
        yield return ["Budbreak", Date(dates.Budbreak), None, None];
        yield return ["Bloom", Date(dates.Bloom), Date(published.Flowering),
            Difference(dates.Bloom, published.Flowering)];
        yield return ["Veraison", Date(dates.Veraison), Date(published.Veraison),
            Difference(dates.Veraison, published.Veraison)];
        yield return [$"Ripe: {Measure.Brix(scenario.Season.TargetSugar)}", Date(dates.TargetSugar), None, None];
        yield return ["Harvest", Date(dates.Harvest), None, None];
        yield return ["End of the season", Date(dates.End), None, None];
    }

    public string ThermalTime() =>
        $"Thermal time counts from budbreak, above {Measure.Temperature(units, _summary.ThermalTime.BaseDegC, 1)}: "
            + $"{_summary.ThermalTime.Method}.";

    public IEnumerable<IReadOnlyList<string>> FeedingLeaves()
    {
        if (!Charts.FeedingLeaves.HasFruit(_summary)) yield break;
        foreach (var share in _summary.RipeningCarbonByLeafAge.OrderBy(s => s.FromD))
        {
            var ages = share.ToD - share.FromD <= Charts.FeedingLeaves.WidestClosedClassD
                ? $"{share.FromD} to {share.ToD} days"
                : $"{share.FromD} days and older";
            yield return [ages, $"{Number(100 * share.Share, 1)} %"];
        }
    }

    public IEnumerable<IReadOnlyList<string>> Canopy(CanopySummary canopy)
    {
        yield return ["Shoots a vine", Number(canopy.ShootsPerVine, 1)];
        yield return [$"Shoots {Measure.PerLength.Unit(units)} of canopy",
            Number(Measure.PerLength.In(units, canopy.ShootsPerM), 1)];
        yield return ["Length of canopy for each length of row", Number(canopy.CanopyMPerRowM, 2)];
        yield return ["Nodes a shoot", Number(canopy.NodesPerShoot, 1)];
        yield return ["Length of a shoot", Measure.Length.Text(units, canopy.ShootLengthCm, 0)];
        yield return ["Leaf area of a shoot's own leaves",
            Measure.LeafAreaOfShoot.Text(units, canopy.PrimaryLeafAreaPerShootCm2, 0)];
        yield return ["Leaf area of its laterals",
            Measure.LeafAreaOfShoot.Text(units, canopy.LateralLeafAreaPerShootCm2, 0)];
        yield return ["Leaf area a vine", Measure.LeafArea.Text(units, canopy.LeafAreaM2PerVine, 2)];
        yield return ["Leaf area along the canopy", Measure.LeafAreaPerLength.Text(units, canopy.LeafAreaM2PerM, 2)];
        yield return ["Leaf layers in the fruit zone", Number(canopy.LeafLayerNumber, 2)];
        yield return ["Gaps in the fruit zone", Percent(canopy.GapFraction)];
        yield return ["Leaves inside the canopy", Percent(canopy.InteriorLeafFraction)];
        yield return ["Clusters inside the canopy", Percent(canopy.InteriorClusterFraction)];
        yield return ["Shoots whose tips grow freely", Percent(canopy.GrowingTipsFraction)];
    }

    public IEnumerable<IReadOnlyList<string>> Harvest(HarvestSummary harvest)
    {
        yield return ["Yield a vine", Measure.Mass.Text(units, harvest.YieldKgPerVine, 2)];
        yield return ["Yield of the block", Measure.YieldPerArea.Text(units, harvest.YieldTPerHa, 1)];
        yield return ["Sugar", harvest.SugarBrix is { } brix ? $"{Number(brix, 1)} Brix" : None];
        yield return ["Leaf area for each weight of fruit",
            harvest.LeafAreaM2PerKgFruit is { } area ? Measure.LeafAreaPerFruit.Text(units, area, 2) : None];
        yield return ["Prunings a vine", Measure.Mass.Text(units, harvest.PruningsKgPerVine, 2)];
        yield return ["Yield to prunings", harvest.YieldToPrunings is { } ratio ? Number(ratio, 1) : None];
    }

    public IEnumerable<IReadOnlyList<string>> Work() => season.Work.Select(work => (IReadOnlyList<string>)
    [
        Date(work.Date), work.What, Whole(work.Shoots), Whole(work.Clusters), Whole(work.Leaves),
        Measure.LeafArea.Text(units, work.LeafAreaM2PerVine, 2), Measure.SmallMass.Text(units, work.FruitGPerVine, 0),
    ]);

    public IEnumerable<IReadOnlyList<string>> Totals()
    {
        var totals = _summary.Season;
        yield return ["CO₂ gained by the leaves, nights included",
            Measure.Mass.Text(units, totals.NetAssimilationKgCo2PerVine, 2)];
        yield return ["CO₂ given off by the rest of the vine",
            Measure.Mass.Text(units, totals.RespirationKgCo2PerVine, 2)];
        yield return ["Water transpired", Measure.Volume.Text(units, totals.TranspirationLPerVine, 0)];
        yield return ["PAR (light for photosynthesis) taken up", $"{Number(totals.AbsorbedParMolPerVine, 0)} mol"];
        yield return ["Ripening capacity, mean from veraison on",
            _summary.RipeningCapacityGPerKgD is { } capacity
                ? $"{Measure.SugarPerFruit.Text(units, capacity, 2)} a day"
                : None];
        yield return ["Nodes at bloom", _summary.NodesAtBloom is { } nodes ? Number(nodes, 1) : None];
    }

    public IEnumerable<IReadOnlyList<string>> Checks()
    {
        var checks = _summary.Checks;
        yield return ["Light that the balance does not account for, at most", Scientific(checks.LightClosureMax)];
        yield return ["Carbon that the balance does not account for, at most, share of the day's",
            Scientific(checks.CarbonClosureMaxRelative)];
        yield return ["Leaves, at most", Whole(checks.LeavesMax)];
        yield return ["Triangles that stand for them, at most", Whole(checks.TrianglesMax)];
        yield return ["Directions of the sky", Whole(checks.SkyDirections)];
        yield return ["Quality of the light", _summary.Quality];
        yield return ["Seed", $"{_summary.Seed}"];
    }

    private static string Number(double value, int decimals) =>
        double.IsFinite(value) ? Measure.Number(value, decimals) : None;

    private static string Percent(double? share) =>
        share is { } s && double.IsFinite(s) ? $"{Number(100 * s, 0)} %" : None;

    private static string Whole(int value) => FormattableString.Invariant($"{value}");

    /// <summary>A size as people write it, 3.1 × 10⁻¹².</summary>
    private static string Scientific(double value)
    {
        if (value == 0) return "0";
        if (!double.IsFinite(value)) return None;
        var parts = FormattableString.Invariant($"{value:0.0e+0}").Split('e');
        var raised = string.Concat(parts[1].Where(c => c != '+').Select(c => c == '-' ? '⁻' : "⁰¹²³⁴⁵⁶⁷⁸⁹"[c - '0']));
        return $"{parts[0]} × 10{raised}";
    }

    private static string Date(DateOnly? date) => date is { } day ? SeasonSentences.Date(day) : None;

    private static string Difference(DateOnly? model, DateOnly? published)
    {
        if (model is not { } ours || published is not { } theirs) return None;
        var days = ours.DayNumber - theirs.DayNumber;
        var unit = Math.Abs(days) == 1 ? "day" : "days";
        return days == 0 ? "same day" : $"{Math.Abs(days)} {unit} {(days > 0 ? "later" : "earlier")}";
    }
}
