using CanopySim.Carbon;
using CanopySim.Phenology;
using CanopySim.Plants;
using CanopySim.Protection;
using CanopySim.Water;

namespace CanopySim.Training;

/// <summary>Days of the stages that work can be timed by; null where a stage was not reached yet.</summary>
public readonly record struct StagesReached(DateOnly? Budbreak, DateOnly? Bloom, DateOnly? Veraison, DateOnly? Ripe)
{
    public static StagesReached Of(Stages stages) => new(stages.Budbreak, stages.Bloom, stages.Veraison, stages.Ripe);

    internal DateOnly? Of(WorkStage stage) => stage switch
    {
        WorkStage.Budbreak => Budbreak,
        WorkStage.Bloom => Bloom,
        WorkStage.Veraison => Veraison,
        _ => Ripe,
    };
}

/// <summary>
/// Does the season's work when it falls due, each step once, and writes down what was done and what could not be.
/// Steps of one day go in this order: shoot thinning, tucking, side hedging, topping, laterals, leaves, clusters,
/// sprays, water; within a list as it stands.
/// </summary>
public sealed class CanopyWorker
{
    private readonly List<Planned> _plan;
    private readonly List<WorkDone> _done = [];
    private readonly List<string> _warnings = [];
    private readonly List<SprayOnDay> _sprays = [];
    private double _longest;

    /// <summary>A worker for a block, who waters the soil given; without a soil nothing is watered.</summary>
    public CanopyWorker(Scenario scenario, SoilWater? soil = null)
    {
        var place = new WorkPlace(scenario);
        var work = scenario.CanopyWork;
        _plan =
        [
            .. Plan("canopy_work.shoot_thinning", work.ShootThinning, (step, _) => new ShootThinningWork(place, step)),
            .. Plan("canopy_work.tucking", work.Tucking, (step, _) => new TuckingWork(step)),
            .. Plan("canopy_work.side_hedging", work.SideHedging, (step, _) => new SideHedgingWork(place, step)),
            .. Plan("canopy_work.topping", work.Topping, (step, _) => new ToppingWork(place, step)),
            .. Plan("canopy_work.lateral_removal", work.LateralRemoval, (step, i) =>
                new LateralRemovalWork(place, step, i)),
            .. Plan("canopy_work.leaf_removal", work.LeafRemoval, (step, i) => new LeafRemovalWork(place, step, i)),
            .. Plan("canopy_work.cluster_thinning", work.ClusterThinning, (step, _) =>
                new ClusterThinningWork(place, step)),
            .. Plan("canopy_work.sprays", work.Sprays, (step, i) => new SprayWork(place, step, i)),
        ];
        if (soil is not null)
            _plan.AddRange(
                Plan("soil.irrigation", scenario.Soil.Irrigation, (step, _) => new IrrigationWork(soil, step)));
    }

    /// <summary>What was done so far.</summary>
    public IReadOnlyList<WorkDone> Done => _done;

    /// <summary>Sprays that were done, in their order.</summary>
    public IReadOnlyList<SprayOnDay> Sprays => _sprays;

    /// <summary>Sentences on what could not be done as the plan wants it.</summary>
    public IReadOnlyList<string> Warnings => _warnings;

    /// <summary>
    /// Does what falls due on a day for the whole cell; says what was cut from each vine, in their order, and whether
    /// the canopy has changed.
    /// </summary>
    public (IReadOnlyList<LostMass> Lost, bool CanopyChanged) Apply(Canopy canopy, StagesReached stages, DateOnly date)
    {
        var lost = new LostMass[canopy.Vines.Count];
        var changed = false;
        var length = MeanLength(canopy);
        var today = _plan.Where(planned => !planned.IsOver && planned.IsDue(stages, length, date)).ToList();
        foreach (var planned in today)
        {
            planned.IsOver = true;
            if (planned.Work.NeedsShoots && !canopy.PrimaryShoots().Any())
            {
                Warn(planned, date, "no shoot stood, so nothing was done");
                continue;
            }

            var tally = new WorkTally(canopy.Vines.Count);
            planned.Work.Do(canopy, tally);
            for (var i = 0; i < lost.Length; i++) lost[i] += tally.Lost[i];
            changed |= tally.CanopyChanged;
            foreach (var sentence in tally.Warnings) Warn(planned, date, sentence);
            if (!tally.AnythingDone) continue;
            if (planned.Work is SprayWork spray) _sprays.Add(spray.On(date));
            double vines = canopy.Vines.Count;
            _done.Add(new WorkDone(
                date, planned.Action, planned.Work.Words, tally.Shoots, tally.Clusters, tally.Leaves,
                tally.LeafArea / vines, tally.Fruit / vines));
        }

        for (var i = 0; i < today.Count; i++)
            for (var j = i + 1; j < today.Count; j++)
                if (today[i].Work.Overlaps(today[j].Work))
                    Warn(today[j], date, $"{today[i].Key} fell on the same day; both were done, this one last");
        return (lost, changed);
    }

    /// <summary>Closes the season: what was never due becomes a warning.</summary>
    /// <param name="stages">The stages that were reached.</param>
    /// <param name="first">First day of the season.</param>
    /// <param name="last">Its last day.</param>
    /// <param name="isCutShort">True where the season was only run to a day that was asked for: then what is timed
    /// later is no fault.</param>
    public void Close(StagesReached stages, DateOnly first, DateOnly last, bool isCutShort)
    {
        foreach (var planned in _plan)
        {
            if (planned.IsOver || planned.WhyNever(stages, _longest, first, last, isCutShort) is not { } reason)
                continue;
            _warnings.Add($"{planned.Key} was never done: {reason}.");
        }
    }

    private double MeanLength(Canopy canopy)
    {
        if (!_plan.Any(planned => !planned.IsOver && planned.Work.Step.WhenShootsReach is not null)) return 0;
        var shoots = canopy.PrimaryShoots().ToList();
        var length = shoots.Count > 0 ? shoots.Average(shoot => shoot.Length) : 0;
        _longest = Math.Max(_longest, length);
        return length;
    }

    private void Warn(Planned planned, DateOnly date, string sentence) =>
        _warnings.Add($"{planned.Key} on {date:yyyy-MM-dd}: {sentence}.");

    private static IEnumerable<Planned> Plan<T>(string key, IReadOnlyList<T> steps, Func<T, int, IWork> work) =>
        steps.Select((step, i) => new Planned(key, i, work(step, i)));

    private sealed class Planned(string list, int index, IWork work)
    {
        public IWork Work { get; } = work;

        /// <summary>Its key in the scenario.</summary>
        public string Key { get; } = FormattableString.Invariant($"{list}.{index}");

        public string Action { get; } = list[(list.LastIndexOf('.') + 1)..];

        public bool IsOver { get; set; }

        public bool IsDue(StagesReached stages, double meanLength, DateOnly date)
        {
            var step = Work.Step;
            if (step.On is { } day) return date == day;
            if (step.WhenShootsReach is { } length) return meanLength >= length;
            return step.Stage is { } stage && stages.Of(stage) is { } reached
                && date >= reached.AddDays(step.DaysAfter ?? 0);
        }

        public string? WhyNever(StagesReached stages, double longest, DateOnly first, DateOnly last, bool isCutShort)
        {
            var step = Work.Step;
            if (step.On is { } day)
            {
                if (isCutShort && day > last) return null;
                return $"its day, {day:yyyy-MM-dd}, lies outside the season that was simulated, "
                    + $"{first:yyyy-MM-dd} to {last:yyyy-MM-dd}";
            }

            if (isCutShort) return null;
            if (step.WhenShootsReach is { } length)
                return FormattableString.Invariant(
                    $"shoots reached {longest:0.##} m on average at most, not {length:0.##} m");
            if (step.Stage is not { } stage) return "it has no time";
            var name = stage == WorkStage.Ripe ? "the target sugar" : $"{stage}".ToLowerInvariant();
            return stages.Of(stage) is { } reached
                ? $"the season ended on {last:yyyy-MM-dd}, before its day, "
                    + $"{Later(reached, last, step.DaysAfter ?? 0):yyyy-MM-dd}"
                : $"{name} was not reached";
        }

        // Work of the day on which the fruit is ripe would have been done on the next.
        private static DateOnly Later(DateOnly reached, DateOnly last, int days) =>
            reached.AddDays(days) is var due && due > last ? due : last.AddDays(1);
    }
}
