using System.Globalization;

namespace CanopySim.Bench;

/// <summary>Pairs of <c>--name value</c> behind a command; what is not given has its default.</summary>
internal sealed class Options
{
    private readonly Dictionary<string, string> _values;

    private Options(Dictionary<string, string> values) => _values = values;

    /// <summary>Null, with the usage on the error stream, where something is not understood.</summary>
    public static Options? Read(string[] arguments, string usage, params (string Name, string Default)[] known)
    {
        var values = known.ToDictionary(option => option.Name, option => option.Default, StringComparer.Ordinal);
        var understood = arguments.Length % 2 == 0;
        for (var i = 0; understood && i < arguments.Length; i += 2)
        {
            understood = values.ContainsKey(arguments[i]);
            values[arguments[i]] = arguments[i + 1];
        }

        if (understood) return new Options(values);
        Console.Error.WriteLine(usage);
        return null;
    }

    public string Text(string name) => _values[name];

    public int Number(string name) => Numbers(name).Single();

    public int[] Numbers(string name) => List(name, text => int.Parse(text, CultureInfo.InvariantCulture));

    public T[] List<T>(string name, Func<string, T> read) => [.. _values[name].Split(',', StringSplitOptions.RemoveEmptyEntries).Select(read)];
}
