using System.Security.Cryptography;
using CanopySim.Files.Scenarios;

namespace CanopySim.Files.Results;

/// <summary>SHA-256 of everything that was read, as <c>input_sha256</c> has it: lower-case hexadecimal.</summary>
public sealed record InputHashes(string Scenario, IReadOnlyList<string> BasedOn, string Weather)
{
    public static InputHashes Of(ScenarioDocument document) =>
        new(OfFile(document.Path), [.. document.BasedOn.Select(OfFile)], OfFile(document.WeatherPath));

    public static string OfFile(string path)
    {
        using var stream = File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }
}
