using CanopySim.Assessment;
using CanopySim.Files.Charts;
using CanopySim.Files.Scenarios;
using CanopySim.Fitting;

namespace CanopySim.Files.Forecast;

/// <summary>A stage or aim that lies ahead, over the members.</summary>
/// <param name="Name">What it is: bloom, veraison, target sugar.</param>
/// <param name="P10">Day by which a tenth of all members have reached it; null where fewer do.</param>
/// <param name="P50">Day by which half have.</param>
/// <param name="P90">Day by which nine of ten have.</param>
/// <param name="Chance">Share of the members that reach it in their season [0 to 1].</param>
public sealed record StageOutlook(string Name, DateOnly? P10, DateOnly? P50, DateOnly? P90, double Chance);

/// <summary>Share of the ripening weeks' carbon from leaves of an age: the members' mean, and four of five of them.</summary>
public readonly record struct AgeOutlook(int FromD, int ToD, double P10, double Mean, double P90);

/// <summary>A range of the members: nine of ten have more than the first, half more than the second, a tenth more than the last.</summary>
public readonly record struct Tenths(double P10, double P50, double P90);

/// <summary>What could still be done, against the same vines in the same weather without it.</summary>
/// <param name="Words">What, without the day.</param>
/// <param name="Day">The day.</param>
/// <param name="Members">Members on which it was tried.</param>
/// <param name="DaysLater">Days by which the fruit is ripe later, negative for earlier; null where none gets ripe both ways.</param>
/// <param name="Yield">Yield with it over that without it [1].</param>
/// <param name="RipeningCapacity">The same of the sugar that leaves could send to each kilogram of fruit in a day [1].</param>
/// <param name="Fault">Why it cannot be had; empty where it can.</param>
public sealed record OptionOutlook(
    string Words, DateOnly Day, int Members, Tenths? DaysLater, Tenths? Yield, Tenths? RipeningCapacity, string Fault = "");

/// <summary>What the notes of one thing and day said to the vine.</summary>
/// <param name="Words">What was noted, in the reader's words and units.</param>
/// <param name="Before">What the members showed before any note, with its spread.</param>
/// <param name="After">The same after all notes.</param>
/// <param name="Narrowing">How much narrower the members stand for it [0 to 1].</param>
/// <param name="Contradicts">True where it was left out because no member comes near it.</param>
public sealed record NoteOutlook(string Words, string Before, string After, double Narrowing, bool Contradicts);

/// <summary>What the page of a forecast is made of. Quantities are metric; the page turns them into the reader's units.</summary>
public sealed record ForecastContent
{
    /// <summary>The vine as it stands.</summary>
    public required StandingVine Vine { get; init; }

    /// <summary>Its noted tips.</summary>
    public required IReadOnlyList<TipReading> Tips { get; init; }

    public required int Members { get; init; }

    /// <summary>Where the weather ahead comes from, as a sentence.</summary>
    public required string Outlook { get; init; }

    /// <summary>Bloom, veraison and target sugar.</summary>
    public required StageOutlook Bloom { get; init; }

    public required StageOutlook Veraison { get; init; }

    public required StageOutlook Target { get; init; }

    /// <summary>Length of a mean shoot [cm].</summary>
    public required IReadOnlyList<FanDay> ShootLengthCm { get; init; }

    /// <summary>Leaf area of a vine [m²].</summary>
    public required IReadOnlyList<FanDay> LeafAreaM2PerVine { get; init; }

    /// <summary>Sugar of the fruit [Brix]; not finite where fewer than half of the members have ripening fruit.</summary>
    public required IReadOnlyList<FanDay> SugarBrix { get; init; }

    /// <summary>Share of the members that have reached the target sugar by each day [0 to 1].</summary>
    public required IReadOnlyList<(DateOnly Date, double Chance)> ChanceOfTarget { get; init; }

    /// <summary>Noted mean lengths of shoots [cm] and sugars [Brix].</summary>
    public IReadOnlyList<(DateOnly Date, double Value)> NotedLengthsCm { get; init; } = [];

    public IReadOnlyList<(DateOnly Date, double Value)> NotedSugars { get; init; } = [];

    /// <summary>Leaves that will feed the fruit, by age; none where no fruit will ripen.</summary>
    public IReadOnlyList<AgeOutlook> FeedingLeaves { get; init; } = [];

    /// <summary>Leaf area of a vine at veraison [m²], and the share of it that is younger than 60 days [0 to 1]; null without.</summary>
    public (Tenths LeafArea, Tenths YoungShare)? AtVeraison { get; init; }

    /// <summary>Whether enough young, lit leaf is on the way, in a sentence; empty where nothing ripens.</summary>
    public string LeafVerdict { get; init; } = "";

    /// <summary>Which option changes ripeness most, in a sentence; empty where none was tried.</summary>
    public string OptionVerdict { get; init; } = "";

    /// <summary>Chance that the target is reached by a day, week by week.</summary>
    public IReadOnlyList<(DateOnly Date, double Chance)> ChanceByWeek { get; init; } = [];

    /// <summary>What could still be done.</summary>
    public IReadOnlyList<OptionOutlook> Options { get; init; } = [];

    /// <summary>What each note did.</summary>
    public IReadOnlyList<NoteOutlook> Notes { get; init; } = [];

    /// <summary>Notes that were left out of a day's mean, each as a sentence.</summary>
    public IReadOnlyList<string> OddNotes { get; init; } = [];

    /// <summary>What the forecast itself takes for granted, each as a sentence with its mark.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>Values of the scenario with their marks.</summary>
    public IReadOnlyList<UnderstoodValue> Understood { get; init; } = [];

    /// <summary>Sentences on work that could not be done as planned, and what to heed.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    public Units Units { get; init; }

    /// <summary>The day in the foot; null for none.</summary>
    public DateOnly? Printed { get; init; }

    internal DateOnly AsOf => Vine.AsOf;

    internal double TargetBrix => Vine.Scenario.Season.TargetSugar;
}
