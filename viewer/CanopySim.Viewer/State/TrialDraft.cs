using CanopySim.Files.Charts;
using CanopySim.Growth;
using CanopySim.Training;

namespace CanopySim.Viewer.State;

/// <summary>
/// What can be tried on a block: a handful of its values, as the reader has changed them. What is left alone stays as
/// the scenario has it.
/// </summary>
public sealed record TrialDraft
{
    // A topping where the scenario has none comes when shoots have grown this far past the cut [m]: assumed.
    private const double PastTheCut = 0.1;

    private const double ShortestBeforeTopping = 0.3;

    // Leaves go about fruit set where the scenario does not say when: common practice, no source.
    private const int DaysFromBloomToSet = 14;

    /// <summary>Shoots kept per metre of canopy.</summary>
    public required double ShootsPerMeter { get; init; }

    public required TrellisForm Form { get; init; }

    /// <summary>Direction of the row, clockwise from north [deg].</summary>
    public required double Azimuth { get; init; }

    /// <summary>Height of the cut over the ground [m]; null: shoots are not topped.</summary>
    public required double? ToppingHeight { get; init; }

    /// <summary>Share of the fruit zone's leaves that is taken off, 0 to 1.</summary>
    public required double LeafRemovalShare { get; init; }

    public required IReadOnlyList<LeafAgePoint> AgePoints { get; init; }

    /// <summary>What the scenario says now.</summary>
    public static TrialDraft Of(Scenario scenario) => new()
    {
        ShootsPerMeter = scenario.CanopyWork.ShootsPerMeter,
        Form = scenario.Trellis.Form,
        Azimuth = scenario.Rows.Azimuth,
        ToppingHeight = scenario.CanopyWork.Topping.Select(topping => topping.Height).FirstOrDefault(),
        LeafRemovalShare = scenario.CanopyWork.LeafRemoval.Select(removal => removal.Share).FirstOrDefault(),
        AgePoints = scenario.LeafAge.Points,
    };

    /// <summary>
    /// The scenario with what was changed. Another form of trellis takes its own heights and widths; another height
    /// holds for every topping,
    /// another share for every leaf removal, at the times that the scenario gives.
    /// </summary>
    public Scenario Apply(Scenario scenario)
    {
        var now = Of(scenario);
        var trellis = Form == now.Form ? scenario.Trellis : new Trellis { Form = Form };
        var work = scenario.CanopyWork;
        if (ShootsPerMeter != now.ShootsPerMeter) work = work with { ShootsPerMeter = ShootsPerMeter };
        if (ToppingHeight != now.ToppingHeight) work = work with { Topping = Toppings(work.Topping, trellis) };
        if (LeafRemovalShare != now.LeafRemovalShare) work = work with { LeafRemoval = Removals(work.LeafRemoval) };
        return scenario with
        {
            Trellis = trellis,
            CanopyWork = work,
            Rows = Azimuth == now.Azimuth ? scenario.Rows : scenario.Rows with { Azimuth = Azimuth },
            LeafAge = AgePoints.SequenceEqual(now.AgePoints) ? scenario.LeafAge
                : new LeafAgeCurve { Points = AgePoints },
        };
    }

    /// <summary>Whether both say the same.</summary>
    public bool IsLike(TrialDraft other) => this with { AgePoints = other.AgePoints } == other
        && AgePoints.SequenceEqual(other.AgePoints);

    /// <summary>What was changed, in words; empty where nothing was.</summary>
    public IReadOnlyList<string> Changes(Scenario scenario, Units units)
    {
        var now = Of(scenario);
        List<string> changes = [];
        if (ShootsPerMeter != now.ShootsPerMeter)
            changes.Add(Measure.PerLength.Text(units, ShootsPerMeter, 1)
                .Replace(" per", " shoots per", StringComparison.Ordinal));
        if (Form != now.Form) changes.Add($"trellis {TrialWords.Form(Form)}");
        if (Azimuth != now.Azimuth) changes.Add($"rows at {Measure.Number(Azimuth, 0)}°");
        if (ToppingHeight != now.ToppingHeight)
            changes.Add(ToppingHeight is { } height ? $"topped at {TrialWords.Height(height, units)}" : "not topped");
        if (LeafRemovalShare != now.LeafRemovalShare)
            changes.Add($"{Measure.Number(100 * LeafRemovalShare, 0)} % of the fruit zone's leaves off");
        if (!AgePoints.SequenceEqual(now.AgePoints)) changes.Add("another age curve");
        return changes;
    }

    /// <summary>
    /// The draft with a point of the age curve moved: never past its neighbors, never out of the parameters' ranges.
    /// </summary>
    public TrialDraft WithPoint(int index, double age, double efficiency)
    {
        var points = AgePoints.ToArray();
        var least = index > 0 ? points[index - 1].Age + 1 : 0;
        var most = index < points.Length - 1 ? points[index + 1].Age - 1 : Math.Max(points[index].Age, 365);

        // Neighbors a day apart leave no room between them.
        var to = most < least ? points[index].Age : Math.Clamp(Math.Round(age), least, most);
        points[index] = new LeafAgePoint(to, Math.Clamp(Math.Round(efficiency, 2), 0, 1));
        return this with { AgePoints = points };
    }

    private IReadOnlyList<Topping> Toppings(IReadOnlyList<Topping> toppings, Trellis trellis)
    {
        if (ToppingHeight is not { } height) return [];
        if (toppings.Count > 0) return [.. toppings.Select(topping => topping with { Height = height, Nodes = null })];
        var reach = Math.Abs(height - trellis.CordonHeightOrDefault) + PastTheCut;
        return [new Topping { Height = height,
            WhenShootsReach = Math.Round(Math.Max(ShortestBeforeTopping, reach), 2) }];
    }

    private IReadOnlyList<LeafRemoval> Removals(IReadOnlyList<LeafRemoval> removals)
    {
        if (LeafRemovalShare <= 0) return [];
        return removals.Count > 0
            ? [.. removals.Select(removal => removal with { Share = LeafRemovalShare })]
            : [new LeafRemoval { Stage = WorkStage.Bloom, DaysAfter = DaysFromBloomToSet, Share = LeafRemovalShare }];
    }
}

/// <summary>Words for what can be tried.</summary>
public static class TrialWords
{
    private const double CentimetersPerMeter = 100;

    /// <summary>The trade's name of a form.</summary>
    public static string Form(TrellisForm form) => form switch
    {
        TrellisForm.UprightHedge => "upright hedge",
        TrellisForm.HangingCurtain => "hanging curtain",
        TrellisForm.Overhead => "overhead roof",
        TrellisForm.HighWire => "high wire",
        TrellisForm.TwinCurtain => "twin curtain",
        TrellisForm.OpenU => "open U",
        TrellisForm.SlantedV => "slanted V",
        TrellisForm.UpAndDown => "up and down",
        TrellisForm.Bush => "bush",
        _ => throw new ArgumentOutOfRangeException(nameof(form), form, "no such form"),
    };

    /// <summary>A height over the ground: metres, or feet and inches as inches.</summary>
    public static string Height(double meters, Units units) => units == Units.Us
        ? Measure.Length.Text(units, meters * CentimetersPerMeter, 0)
        : $"{Measure.Number(meters, 2)} m";
}
