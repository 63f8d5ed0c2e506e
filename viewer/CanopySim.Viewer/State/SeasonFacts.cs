using CanopySim.Files.Charts;
using CanopySim.Files.Recording;
using CanopySim.Files.Report;
using CanopySim.Results;

namespace CanopySim.Viewer.State;

/// <summary>What the screen asks of a recording again and again: kept as far as the days have come.</summary>
public sealed class SeasonFacts(SeasonRecording recording)
{
    /// <summary>Width of a class in <c>leaf_ages.csv</c> [d].</summary>
    private const int AgeClassDays = 10;

    private static readonly string[] StageNames = ["budbreak", "bloom", "veraison", "ripe"];

    private readonly List<StageMark> _stages = [];
    private readonly List<LeafAgeRow> _ages = [];
    private int _stagesTo;
    private int _agesTo;
    private (int Days, SeasonResult Result)? _soFar;

    public SeasonRecording Recording => recording;

    public int DayCount => recording.DayCount;

    public DateOnly DateOf(int day) => recording.Row(day).Date;

    /// <summary>Number of the day, the nearest where it is not there.</summary>
    public int DayOf(DateOnly date) =>
        DayCount == 0 ? 0 : Math.Clamp(date.DayNumber - DateOf(0).DayNumber, 0, DayCount - 1);

    /// <summary>Stages that were reached, each on the first day that has it.</summary>
    public IReadOnlyList<StageMark> Stages
    {
        get
        {
            for (; _stagesTo < DayCount; _stagesTo++)
            {
                var row = recording.Row(_stagesTo);
                var reached = Array.IndexOf(StageNames, row.Stage);
                for (var stage = _stages.Count; stage <= reached; stage++) _stages.Add(new StageMark(StageNames[stage],
                    row.Date));
            }

            return _stages;
        }
    }

    /// <summary>Rows of <c>leaf_ages.csv</c>, from the leaves of each day.</summary>
    public IReadOnlyList<LeafAgeRow> LeafAges
    {
        get
        {
            for (; _agesTo < DayCount; _agesTo++) AddAges(_agesTo);
            return _ages;
        }
    }

    /// <summary>The season's result, or what it would be if it ended on the last day that is there.</summary>
    public SeasonResult Result()
    {
        if (recording.Outcome() is { } outcome) return outcome;
        if (_soFar is { } kept && kept.Days == DayCount) return kept.Result;
        var rows = Enumerable.Range(0, DayCount).Select(recording.Row).ToList();
        var result = new SeasonResult
        {
            Summary = SummarySoFar(),
            Days = rows,
            LeafAges = [.. LeafAges],
            Leaves = [],
            AgeCurve = recording.Scenario.LeafAge,
        };
        _soFar = (rows.Count, result);
        return result;
    }

    /// <summary>
    /// The sentence that a reader came for, the fullest first: whoever has less room takes a later one.
    /// </summary>
    public IReadOnlyList<string> Answers(Units units)
    {
        if (recording.Outcome() is not { } season)
        {
            if (DayCount == 0) return ["The season is being computed."];
            var date = ChartAxis.DayText(DateOf(DayCount - 1), isShort: false);
            return
            [
                "The season is being computed: which leaves feed the fruit is known once it has ripened. "
                    + $"{date} is there.",
                $"The season is being computed: {date} is there.",
            ];
        }

        var dates = season.Summary.Dates;
        var ripe = dates.TargetSugar is { } day ? $" Ripe on {ChartAxis.DayText(day, isShort: false)}."
            : " Not ripe in this season.";
        List<string> answers = [SeasonSentences.Opening(season, units) + ripe, SeasonSentences.Opening(season, units)];
        if (FeedingLeaves.Of(season.Summary) is { } leaves)
        {
            var fed = $"Leaves {leaves.AgesText} gave {leaves.PercentText} of the sugar.";
            answers.AddRange([fed + ripe, fed]);
        }

        return answers;
    }

    private SeasonSummary SummarySoFar()
    {
        DateOnly? On(string stage) =>
            Stages.Where(mark => mark.Name == stage).Select(mark => (DateOnly?)mark.Date).FirstOrDefault();
        var end = DayCount > 0 ? DateOf(DayCount - 1) : new DateOnly(recording.Scenario.Season.Year ?? 1, 1, 1);
        return new SeasonSummary
        {
            Scenario = recording.Scenario.Name,
            Seed = recording.Scenario.Seed,
            Quality = recording.Head.Quality,
            EstimatedInputs = recording.Head.EstimatedInputs,
            FilledGaps = 0,
            ThermalTime = new ThermalTimeBasis(0, ""),
            Dates = new StageDates(On("budbreak"), On("bloom"), On("veraison"), On("ripe"), null, end),
            PublishedSums = new PublishedDates(null, null),
            EndReason = "until",
            Canopy = null,
            NodesAtBloom = null,
            Harvest = null,
            Season = new SeasonTotals(0, 0, 0, 0, 0),
            RipeningCapacityGPerKgD = null,
            RipeningCarbonByLeafAge = [],
            Checks = new SeasonChecks(0, 0, 0, 0, 0),
            Seconds = new StageSeconds(0, 0, 0, 0),
        };
    }

    private void AddAges(int day)
    {
        var leaves = recording.Leaves(day);
        if (leaves.Count == 0) return;
        var vines = (double)recording.Scenario.Rows.VineCount;
        var classes = Enumerable.Range(0, leaves.Count).Where(i => leaves.AgeDays[i] >= 0)
            .GroupBy(i => leaves.AgeDays[i] / AgeClassDays).OrderBy(group => group.Key);
        foreach (var of in classes)
        {
            var area = of.Sum(i => (double)leaves.Area[i]);
            _ages.Add(new LeafAgeRow(
                DateOf(day), of.Key * AgeClassDays, (of.Key + 1) * AgeClassDays, area / vines,
                of.Sum(i => (double)leaves.AbsorbedParMoles[i]) / vines,
                of.Sum(i => (double)leaves.NetAssimilationGrams[i]) / vines,
                of.Sum(i => (double)leaves.Area[i] * leaves.Efficiency[i]) / area));
        }
    }
}
