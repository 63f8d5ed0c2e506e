using CanopySim.Files.Results;

namespace CanopySim.Files.Recording;

/// <summary>What a recording is of: enough to draw the block and to compute the season again.</summary>
public sealed record RecordingHead
{
    public required string EngineVersion { get; init; }

    /// <summary>The scenario with every value as it was used; its year is that of the season.</summary>
    public required Scenario Scenario { get; init; }

    /// <summary>Local standard time less UTC [h].</summary>
    public required double UtcOffsetHours { get; init; }

    /// <summary>draft, standard or fine.</summary>
    public required string Quality { get; init; }

    /// <summary>Hashes of what was read, as <c>summary.json</c> has them.</summary>
    public required InputHashes Inputs { get; init; }

    /// <summary>Quantities of the weather that were estimated.</summary>
    public required IReadOnlyList<string> EstimatedInputs { get; init; }
}
