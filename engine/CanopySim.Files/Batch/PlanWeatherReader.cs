using System.Globalization;
using System.Text.RegularExpressions;
using CanopySim.Files.Scenarios;

namespace CanopySim.Files.Batch;

/// <summary>Reads the seasons of weather of a plan: files × years × seeds, in that order.</summary>
internal sealed partial class PlanWeatherReader(string plan, ScenarioBinder binder)
{
    private const ulong MostInList = 1_000_000;

    // A larger one would not be the same number in a column of doubles.
    private const ulong LargestSeed = 1UL << 53;

    public IReadOnlyList<PlanWeather> Read(PlanWeatherText text)
    {
        List<string?> files = [.. text.Files.Select(File)];
        List<int?> years = [.. Numbers(text.Years, "weather.years", 1850, 2200).Select(year => (int?)year)];
        List<ulong?> seeds = [.. Numbers(text.Seeds, "weather.seeds", 0, LargestSeed).Select(seed => (ulong?)seed)];
        if (files.Count == 0) files.Add(null);
        if (years.Count == 0) years.Add(null);
        if (seeds.Count == 0) seeds.Add(null);
        return [.. files.SelectMany(file => years.SelectMany(year => seeds.Select(seed => new PlanWeather(file, year, seed))))];
    }

    private string File(string named, int index)
    {
        var key = string.Create(CultureInfo.InvariantCulture, $"weather.files.{index}");
        var path = ScenarioLayers.Beside(plan, named);
        return System.IO.File.Exists(path)
            ? path
            : throw new InputError(binder.PlaceOf(key), $"no file {InputError.Quote(path)}", "a weather file", key);
    }

    private List<ulong> Numbers(IReadOnlyList<string> texts, string key, ulong least, ulong most)
    {
        var numbers = new List<ulong>();
        for (var i = 0; i < texts.Count; i++)
        {
            var place = binder.PlaceOf(string.Create(CultureInfo.InvariantCulture, $"{key}.{i}"));
            var match = FromTo().Match(texts[i]);
            if (!match.Success || !Number(match.Groups["from"].ValueSpan, out var from)
                || !Number(match.Groups["to"].Success ? match.Groups["to"].ValueSpan : match.Groups["from"].ValueSpan, out var to)
                || from < least || to > most || to < from || to - from >= MostInList)
                throw new InputError(
                    place, InputError.Quote(texts[i]),
                    string.Create(CultureInfo.InvariantCulture, $"whole numbers from {least} to {most}, as 3 or 1 to 30"),
                    key);
            for (var number = from; number <= to; number++) numbers.Add(number);
            if ((ulong)numbers.Count > MostInList)
                throw new InputError(
                    place, "more than a million", "a shorter list", key);
        }

        var twice = numbers.GroupBy(number => number).FirstOrDefault(group => group.Count() > 1);
        if (twice is not null)
            throw new InputError(
                binder.PlaceOf(key), string.Create(CultureInfo.InvariantCulture, $"{twice.Key} twice"), "each once", key);
        return numbers;
    }

    private static bool Number(ReadOnlySpan<char> text, out ulong number) =>
        ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);

    [GeneratedRegex(@"^\s*(?<from>[0-9]+)(?:\s+to\s+(?<to>[0-9]+))?\s*$")]
    private static partial Regex FromTo();
}
