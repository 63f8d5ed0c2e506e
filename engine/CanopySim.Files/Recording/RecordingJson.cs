using System.Text.Json;
using System.Text.Json.Serialization;

namespace CanopySim.Files.Recording;

/// <summary>How records stand in a recording as JSON: all of them, by their own names.</summary>
internal static class RecordingJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Converters = { new JsonStringEnumConverter() },
    };

    public static byte[] Bytes<T>(T value) => JsonSerializer.SerializeToUtf8Bytes(value, Options);

    /// <exception cref="InvalidDataException">They are not such a record.</exception>
    public static T Read<T>(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return JsonSerializer.Deserialize<T>(bytes, Options) ?? throw new InvalidDataException("a record is missing");
        }
        catch (Exception error) when (error is JsonException or NotSupportedException or ArgumentException)
        {
            throw new InvalidDataException($"a record cannot be read: {error.Message}");
        }
    }
}
