namespace CanopySim.Runner.Tests.Validation;

/// <summary>A published study and ours beside it.</summary>
internal abstract class Study
{
    public abstract string Title { get; }

    /// <summary>What was done: spacing, weather, what is assumed.</summary>
    public abstract string Done { get; }

    /// <summary>The seasons that it looks at.</summary>
    public abstract IReadOnlyList<SeasonCase> Seasons { get; }

    public abstract StudyResult Judge(ValidationSeasons seasons);
}

/// <summary>What a study gave: judged and told figures, tables that are only told, sentences composed from the numbers.</summary>
internal sealed record StudyResult(params IReadOnlyList<Finding> Findings)
{
    public IReadOnlyList<ToldTable> Tables { get; init; } = [];

    public IReadOnlyList<string> Sentences { get; init; } = [];
}

/// <summary>A table that is told, not judged.</summary>
internal sealed record ToldTable(string Caption, IReadOnlyList<string> Header, IReadOnlyList<IReadOnlyList<string>> Rows);
