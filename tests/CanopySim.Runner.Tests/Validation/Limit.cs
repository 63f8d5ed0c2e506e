namespace CanopySim.Runner.Tests.Validation;

/// <summary>What ours must keep to pass, and how far it is from it.</summary>
internal abstract record Limit
{
    /// <summary>The figure that it is held against.</summary>
    public abstract string Published { get; }

    /// <summary>What is allowed.</summary>
    public abstract string Text { get; }

    public abstract bool Holds(IReadOnlyList<double> ours);

    public abstract string Difference(IReadOnlyList<double> ours);
}

/// <summary>Each of ours within so many percent of its published figure.</summary>
internal sealed record WithinPercent(double Percent, params double[] Figures) : Limit
{
    public override string Published => string.Join(" / ", Figures.Select(NumberSay.Typed));

    public override string Text => $"± {NumberSay.Typed(Percent)} %";

    public override bool Holds(IReadOnlyList<double> ours) => ours.Count == Figures.Length
        && ours.Zip(Figures).All(pair => Math.Abs(pair.First - pair.Second) <= Percent / 100 * Math.Abs(pair.Second));

    public override string Difference(IReadOnlyList<double> ours) =>
        string.Join(" / ", ours.Zip(Figures).Select(pair => NumberSay.Percent((pair.First / pair.Second) - 1)));
}

/// <summary>Each of ours within a published range, its ends included; an end may be open.</summary>
internal sealed record WithinRange(double From, double To) : Limit
{
    public static WithinRange AtLeast(double from) => new(from, double.PositiveInfinity);

    public static WithinRange AtMost(double to) => new(double.NegativeInfinity, to);

    /// <summary>A range of days.</summary>
    public static WithinRange Days(DateOnly from, DateOnly to) => new(from.DayNumber, to.DayNumber) { Say = NumberSay.Day };

    public Func<double, string> Say { get; init; } = NumberSay.Typed;

    public override string Published => double.IsInfinity(To) ? $"{Say(From)} or more"
        : double.IsInfinity(From) ? $"{Say(To)} or less"
        : $"{Say(From)} to {Say(To)}";

    public override string Text => Published;

    public override bool Holds(IReadOnlyList<double> ours) => ours.All(value => value >= From && value <= To);

    public override string Difference(IReadOnlyList<double> ours)
    {
        var farthest = ours.MaxBy(value => Math.Max(From - value, value - To));
        return farthest < From ? $"{NumberSay.Number(From - farthest)} below"
            : farthest > To ? $"{NumberSay.Number(farthest - To)} above"
            : "inside";
    }
}

/// <summary>Ours in the same order of size as the published figures.</summary>
internal sealed record SameOrder(params double[] Figures) : Limit
{
    public override string Published => string.Join(" / ", Figures.Select(NumberSay.Typed));

    public override string Text => "same order";

    public override bool Holds(IReadOnlyList<double> ours)
    {
        if (ours.Count != Figures.Length) return false;
        for (var i = 0; i < ours.Count; i++)
            for (var j = 0; j < i; j++)
                if (Math.Sign(ours[i] - ours[j]) != Math.Sign(Figures[i] - Figures[j])) return false;
        return true;
    }

    public override string Difference(IReadOnlyList<double> ours) => Holds(ours) ? "none" : "another order";
}

/// <summary>Each of ours smaller than the one after it; days: earlier.</summary>
/// <param name="Said">The published direction in words.</param>
internal sealed record Rising(string Said) : Limit
{
    public override string Published => Said;

    public override string Text => "direction";

    public override bool Holds(IReadOnlyList<double> ours) => ours.Zip(ours.Skip(1)).All(pair => pair.First < pair.Second);

    public override string Difference(IReadOnlyList<double> ours) => Holds(ours) ? "none" : "not so";
}
