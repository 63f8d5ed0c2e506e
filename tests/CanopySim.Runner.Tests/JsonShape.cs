using System.Text.Json;
using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>Compares the keys of an object and the types of their values with what readers were promised.</summary>
internal static class JsonShape
{
    /// <summary>Fails where a promised key is missing or of another type. A question mark allows null.</summary>
    /// <param name="element">The object.</param>
    /// <param name="promised">Keys by type, such as <c>"number": "bloom_nodes end"</c>.</param>
    public static void AssertHas(JsonElement element, params (string Type, string Keys)[] promised)
    {
        foreach (var (type, keys) in promised)
        {
            foreach (var key in keys.Split(' '))
            {
                Assert.True(element.TryGetProperty(key, out var value), $"no {key}");
                var isNullAllowed = type.EndsWith('?') && value.ValueKind == JsonValueKind.Null;
                Assert.True(isNullAllowed || Fits(value, type.TrimEnd('?')), $"{key} is {value.GetRawText()}, promised {type}");
            }
        }
    }

    private static bool Fits(JsonElement value, string type) => type switch
    {
        "number" => value.ValueKind == JsonValueKind.Number && double.IsFinite(value.GetDouble()),
        "whole" => value.ValueKind == JsonValueKind.Number && value.TryGetInt64(out _),
        "text" => value.ValueKind == JsonValueKind.String && value.GetString()!.Length > 0,
        "date" => value.ValueKind == JsonValueKind.String && DateOnly.TryParseExact(value.GetString(), "yyyy-MM-dd", out _),
        "object" => value.ValueKind == JsonValueKind.Object,
        "list" => value.ValueKind == JsonValueKind.Array,
        _ => throw new ArgumentException("unknown type", nameof(type)),
    };
}
