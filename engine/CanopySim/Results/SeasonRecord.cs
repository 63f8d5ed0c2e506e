using CanopySim.Assessment;
using CanopySim.Carbon;
using CanopySim.Fruit;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.Phenology;
using CanopySim.Protection;
using CanopySim.Training;
using CanopySim.Views;

namespace CanopySim.Results;

/// <summary>Writes down the season day by day, as the results files want it, and sums it up at the end. All per vine of the cell.</summary>
internal sealed class SeasonRecord(Scenario scenario, SeasonOptions options)
{
    private readonly List<DayRow> _days = [];
    private readonly List<LeafAgeRow> _ages = [];
    private readonly List<LeafRow> _leaves = [];
    private readonly List<TipSurvey> _tips = [];
    private readonly BerryGrowth _berries = new(scenario.Fruit);
    private readonly RipeningCarbon _ripeningCarbon = new();
    private readonly SeasonAssessment _assessment = new(scenario);
    private readonly CanopyScene _scene = new(scenario);
    private readonly double _vines = scenario.Rows.VineCount;

    private PlacedCanopy? _placed;
    private DayFacts? _last;
    private CanopyPortrait? _portrait;
    private double? _nodesAtBloom;
    private DateOnly? _harvest;
    private double _largestLeafArea;
    private int _leavesMax;
    private int _trianglesMax;
    private double _leafRespiration;
    private double _lightClosure;
    private double _carbonClosure;

    /// <summary>Leaf area of the last day over the largest so far [0 to 1].</summary>
    public double LeafAreaShareOfLargest =>
        _largestLeafArea > 0 && _days.Count > 0 ? _days[^1].LeafAreaM2PerVine / _largestLeafArea : 1;

    /// <summary>The row of the day that was added last.</summary>
    public DayRow LastDay => _days[^1];

    /// <summary>Days on which frost killed green tissue in spring.</summary>
    public List<DateOnly> SpringFrosts { get; } = [];

    public void NoteSpringFrost(DateOnly date) => SpringFrosts.Add(date);

    public void NoteHarvest(DateOnly date) => _harvest = date;

    public void NoteScene(PlacedCanopy placed)
    {
        _placed = placed;
        _leavesMax = Math.Max(_leavesMax, placed.Leaves.Count(leaf => leaf is not null));
        _trianglesMax = Math.Max(_trianglesMax, placed.Scene.TriangleCount);
    }

    public void Add(DayFacts day)
    {
        _last = day;
        var leaves = LeafTotals.Of(day.Leaves);
        var tips = TipSurvey.Of(day.Weather.Date, day.Canopy, scenario.Growth, day.SoilWaterFraction);
        if (tips is not null) _tips.Add(tips);
        var row = RowOf(day, leaves, tips?.GrowingFreely ?? 0);
        _days.Add(row);
        _ages.AddRange(LeafAgeClasses.Of(day.Weather.Date, day.Leaves, _vines));
        _leafRespiration += leaves.RespirationGrams / _vines / 1000;
        if (options.IsAssessed) KeepPortrait(day, row);
        _largestLeafArea = Math.Max(_largestLeafArea, row.LeafAreaM2PerVine);
        foreach (var vine in day.Vines) _carbonClosure = Math.Max(_carbonClosure, vine.Ledger.RelativeClosure);
        if (day.Light is { } light)
        {
            foreach (var budget in light.Solution.ParBudgets) _lightClosure = Math.Max(_lightClosure, budget.Closure);
            foreach (var budget in light.Solution.NirBudgets) _lightClosure = Math.Max(_lightClosure, budget.Closure);
        }

        if (day.Stages.Bloom == day.Weather.Date) _nodesAtBloom = row.NodesPerShoot;
        if (options.IsAssessed) _assessment.Add(day, _placed);
        if (day.Stages.Veraison is not null && (day.Stages.Ripe is null || day.Stages.Ripe == day.Weather.Date))
            _ripeningCarbon.Add(day.Leaves, row.RipeningCapacityGPerKgD);
        if (options.LeavesOn.Contains(day.Weather.Date)) ListLeaves(day);
    }

    public SeasonResult Finish(SeasonFacts facts)
    {
        if (_last is { } last && !options.LeavesOn.Contains(last.Weather.Date)) ListLeaves(last);
        var southern = scenario.Site.IsSouthern;
        var harvest = HarvestOf(facts);
        return new SeasonResult
        {
            Days = _days,
            LeafAges = _ages,
            Leaves = _leaves,
            AgeCurve = scenario.LeafAge,
            Portrait = _portrait,
            Assessment = _assessment.Finish(harvest),
            Work = [.. facts.Work.Done],
            Tips = _tips,
            Sprays = [.. facts.Work.Sprays],
            SprayCover = SprayCover.Of(scenario, facts.Canopy, [.. facts.Work.Sprays.Select(spray => spray.Number)]),
            Summary = new SeasonSummary
            {
                Scenario = scenario.Name,
                Seed = scenario.Seed,
                Quality = options.Quality.ToString().ToLowerInvariant(),
                EstimatedInputs = facts.Weather.EstimatedInputs,
                FilledGaps = facts.Weather.FilledGaps,
                ThermalTime = new ThermalTimeBasis(scenario.Growth.BaseTemperature, ThermalResponse.Method),
                Dates = new StageDates(
                    facts.Stages.Budbreak, facts.Stages.Bloom, facts.Stages.Veraison, facts.Stages.Ripe, _harvest, facts.LastDay),
                PublishedSums = new PublishedDates(
                    PublishedSums.DateOf(scenario.Cultivar.PublishedFloweringSum, facts.Weather, facts.Calendar.Year, southern),
                    PublishedSums.DateOf(scenario.Cultivar.PublishedVeraisonSum, facts.Weather, facts.Calendar.Year, southern)),
                EndReason = facts.EndReason,
                Canopy = _assessment.Canopy,
                NodesAtBloom = _nodesAtBloom,
                Harvest = harvest,
                CanopyScore = _assessment.Score,
                FruitLight = _assessment.FruitLight(facts.Stages.Veraison),
                FruitHeat = _assessment.FruitHeat,
                NextYear = options.IsAssessed ? _assessment.NextYear(facts) : null,
                Season = new SeasonTotals(
                    _days.Sum(day => day.NetAssimilationGCo2PerVine) / 1000,
                    _days.Sum(day => day.RespirationGCo2PerVine) / 1000,
                    _days.Sum(day => day.TranspirationLPerVine),
                    _days.Sum(day => day.AbsorbedParMolPerVine),
                    _leafRespiration),
                RipeningCapacityGPerKgD = _ripeningCarbon.MeanCapacity,
                RipeningCarbonByLeafAge = _ripeningCarbon.Shares(),
                Warnings =
                [
                    .. facts.Work.Warnings,
                    .. SprayCautions.Of(facts.Work.Sprays, facts.Weather.Days).Select(caution => caution.Words),
                ],
                Cautions = WorkCautions.Of(scenario),
                Checks = new SeasonChecks(_lightClosure, _carbonClosure, _leavesMax, _trianglesMax, facts.SkyDirections),
                Seconds = facts.Seconds,
            },
        };
    }

    // Nobody knows before veraison whether it will come: until then the most leaf so far is kept.
    private void KeepPortrait(DayFacts day, DayRow row)
    {
        if (_placed is null) return;
        var isVeraison = day.Stages.Veraison == day.Weather.Date;
        if (isVeraison || (day.Stages.Veraison is null && row.LeafAreaM2PerVine > _largestLeafArea))
            _portrait = CanopyPortrait.Of(_placed, day.Canopy, _scene, day.Weather.Date, isVeraison);
    }

    private DayRow RowOf(DayFacts day, in LeafTotals leaves, double growingFreely)
    {
        var shoots = day.Canopy.PrimaryShoots().ToList();
        var foliage = Foliage.Of(day.Canopy, scenario.LeafAge);
        var crops = day.Canopy.Vines.Select(vine => vine.Crop).ToList();
        var ripening = day.Stages.Veraison is not null && crops.Any(crop => crop.Berries > 0);
        var freshKilograms = crops.Sum(_berries.FreshMass) / 1000;
        var ground = CanopyScene.CellOf(scenario).GroundArea;
        return new DayRow
        {
            Date = day.Weather.Date,
            Stage = StageName(day),
            ThermalTimeDegCD = day.Stages.ThermalTime,
            NodesPerShoot = shoots.Count > 0 ? shoots.Average(shoot => shoot.UnfoldedNodes) : 0,
            ShootLengthCm = shoots.Count > 0 ? 100 * shoots.Average(shoot => shoot.Length) : 0,
            LeafAreaM2PerVine = foliage.Area / _vines,
            LateralLeafAreaM2PerVine = foliage.LateralArea / _vines,
            MeanLeafAgeD = foliage.MeanAgeDays,
            MeanLeafEfficiency = foliage.MeanEfficiency,
            IncidentParMolM2 = day.IncidentParMoles,
            AbsorbedParMolPerVine = leaves.AbsorbedParMoles / _vines,
            FractionParAbsorbed = day.IncidentParMoles > 0 ? leaves.AbsorbedParMoles / (day.IncidentParMoles * ground) : 0,
            NetAssimilationGCo2PerVine = leaves.NetAssimilationGrams / _vines,
            RespirationGCo2PerVine = day.Vines.Sum(vine => vine.Ledger.Respiration)
                / (CarbonContent.Carbohydrate * UnitConversion.GramsCarbohydratePerGramCo2) / _vines,
            ReservesGPerVine = day.Canopy.Vines.Average(vine => vine.Carbon.Reserves),
            FruitDryMassGPerVine = crops.Average(crop => crop.DryMass),
            SugarBrix = ripening ? crops.Where(crop => crop.Berries > 0).Average(_berries.Brix) : null,
            RipeningCapacityGPerKgD = ripening && freshKilograms > 0 ? day.Vines.Sum(vine => vine.RipeningCapacity) / freshKilograms : null,
            TranspirationLPerVine = day.TranspirationLiters / _vines,
            SoilWaterFraction = day.SoilWaterFraction,
            LeafAreaUnsprayedM2PerVine = scenario.CanopyWork.Sprays.Count > 0
                ? day.Canopy.Leaves().Sum(leaf => Math.Max(0, leaf.Area - leaf.SprayedArea)) / _vines
                : null,
            GrowingTipsFraction = growingFreely,
        };
    }

    private static string StageName(DayFacts day) =>
        day.Stages.Ripe is not null ? "ripe"
        : day.Stages.Veraison is not null ? "veraison"
        : day.Stages.Bloom is not null ? "bloom"
        : day.Stages.Budbreak is not null ? "budbreak"
        : "dormant";

    private void ListLeaves(DayFacts day)
    {
        if (day.Light is not { } light) return;
        foreach (var leaf in day.Leaves)
        {
            if (leaf.Leaf.UnfoldedOn is not { } unfolded) continue;
            var center = light.Canopy.Centers[leaf.Surface];
            _leaves.Add(new LeafRow(
                day.Weather.Date, leaf.Leaf.Id.Value, leaf.Leaf.Shoot.Vine.Value, leaf.Leaf.Shoot.Id.Value, leaf.Leaf.Shoot.Order, leaf.Leaf.Rank,
                unfolded, leaf.Leaf.AgeDays, leaf.Area * UnitConversion.SquareCentimetersPerSquareMeter, center.X, center.Y, center.Z,
                leaf.Efficiency, leaf.AbsorbedParMoles, leaf.NetAssimilationGrams));
        }
    }

    private HarvestSummary? HarvestOf(SeasonFacts facts)
    {
        if (facts.Stages.Veraison is null || _last is null) return null;
        var kilograms = facts.Canopy.Vines.Average(vine => _berries.FreshMass(vine.Crop)) / 1000;
        if (kilograms <= 0) return null;
        var prunings = Prunings.KilogramsPerVine(facts.Canopy);
        return new HarvestSummary(
            kilograms,
            kilograms / scenario.Rows.GroundAreaPerVine * 10,
            _days[^1].SugarBrix,
            _days[^1].LeafAreaM2PerVine / kilograms,
            prunings,
            prunings > 0 ? kilograms / prunings : null);
    }
}
