using System.Text.Json;
using System.Text.Json.Serialization;

namespace CanopySim.Files.Batch;

/// <summary>An item that could not be grown, and why.</summary>
public sealed record ItemFailure(int Item, string Message);

/// <summary>A file of a shard's data.</summary>
public sealed record DataFile(string Name, string Sha256, long Bytes, int Rows);

/// <summary>What a shard holds and what it was made from: written last, so that data without one do not count.</summary>
public sealed record ShardManifest
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        NewLine = "\n",
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Name of the plan.</summary>
    public required string Plan { get; init; }

    /// <summary>Of the whole plan, when the shard was made.</summary>
    public required string PlanSha256 { get; init; }

    /// <summary>Of what decides this shard's rows.</summary>
    public required string InputsSha256 { get; init; }

    public required string EngineVersion { get; init; }

    public required string EngineBuild { get; init; }

    public required string SeasonsSchema { get; init; }

    public required string CoursesSchema { get; init; }

    public required int Shard { get; init; }

    public required int FirstItem { get; init; }

    public required int LastItem { get; init; }

    /// <summary>complete, or partial where some of its items are still to be grown.</summary>
    public required string Status { get; init; }

    public required int Failed { get; init; }

    public required IReadOnlyList<ItemFailure> Failures { get; init; }

    public required DataFile Seasons { get; init; }

    public required DataFile Courses { get; init; }

    /// <summary>Time that cores spent on its seasons.</summary>
    public required double Seconds { get; init; }

    public required string Machine { get; init; }

    /// <summary>When it was written, universal time.</summary>
    public required string WrittenUtc { get; init; }

    [JsonIgnore]
    public bool IsComplete => Status == CompleteStatus;

    public const string CompleteStatus = "complete";

    public const string PartialStatus = "partial";

    public byte[] Bytes() => [.. JsonSerializer.SerializeToUtf8Bytes(this, Options), (byte)'\n'];

    /// <summary>The manifest of a file, or null where it is none.</summary>
    public static ShardManifest? Read(string path)
    {
        try
        {
            return JsonSerializer.Deserialize<ShardManifest>(File.ReadAllBytes(path), Options);
        }
        catch (Exception error) when (error is JsonException or FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
    }
}
