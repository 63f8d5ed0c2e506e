using System.Reflection;
using CanopySim.Files.Scenarios;
using CanopySim.Parameters;
using Xunit;

namespace CanopySim.Files.Tests.Scenarios;

/// <summary>
/// DEVELOPERS.md holds every parameter with its value, mark and source, and names those that are fitted. <c>tests/parameters.sh</c>
/// runs this with <c>CANOPYSIM_PARAMETERS</c> set to "write", which writes the table.
/// </summary>
public sealed class ParameterTableTest
{
    private const string Command = "bash tests/parameters.sh";

    private static readonly MarkedSection Table = new("<!-- parameters: made by tests/parameters.sh -->", "<!-- end of parameters -->");
    private static readonly MarkedSection Fitted = new("## What is fitted, and to what", "\n## ");

    private static string Developers => Path.Combine(RepositoryFolder(), "DEVELOPERS.md");

    [Fact]
    public void CommittedTableIsTheOneOfTheRecords()
    {
        var (text, table) = (File.ReadAllText(Developers), ParameterTable.Markdown());
        if (Environment.GetEnvironmentVariable("CANOPYSIM_PARAMETERS") == "write")
        {
            File.WriteAllText(Developers, Table.Put(text, table));
            return;
        }

        var made = Path.Combine(AppContext.BaseDirectory, "PARAMETERS.md");
        if (Table.In(text) != table) File.WriteAllText(made, table);
        var (before, now) = (Table.In(text).Split('\n'), table.Split('\n'));
        Assert.True(
            Table.In(text) == table,
            $"the parameters in DEVELOPERS.md are not those of the records. The new section is {made}; write it with {Command}\n"
            + string.Join('\n', before.Except(now).Select(line => $"- {line}").Concat(now.Except(before).Select(line => $"+ {line}"))));
    }

    [Fact]
    public void EveryParameterOfTheModelHasARow()
    {
        var rows = ParameterTable.Rows();
        var parameters = typeof(Scenario).Assembly.GetTypes().Where(type => !type.IsAbstract || type.IsSealed).SelectMany(type => type.GetProperties())
            .Count(property => property.GetCustomAttribute<ParameterAttribute>() is not null);
        Assert.True(parameters > 80, $"{parameters} parameters");
        Assert.Equal(parameters, rows.Count);
        Assert.Equal(rows.Count, rows.Select(row => row.Key).Distinct().Count());
    }

    [Fact]
    public void WhatIsNeitherGivenNorAssumedHasASource() =>
        Assert.DoesNotContain(ParameterTable.Rows(), row => row.Mark is not (Mark.Given or Mark.Assumed) && row.Source.Length == 0);

    // The source begins with a figure: a number that is no year. The section names the parameter and, beside it, the figure in words.
    [Fact]
    public void WhatIsFittedSaysToWhat()
    {
        var fitted = ParameterTable.Rows().Where(row => row.Mark == Mark.Fitted).ToList();
        Assert.NotEmpty(fitted);
        Assert.All(fitted, row => Assert.Matches(@"^[^:;(]*?(?<![0-9])(?!(19|20)[0-9]{2})[0-9][^:;(]*[:(,]", row.Source));

        var told = Fitted.In(File.ReadAllText(Developers)).Split('\n')
            .Where(line => line.StartsWith("| `", StringComparison.Ordinal))
            .ToDictionary(line => line.Split('`')[1], line => line.Split('|')[2].Trim());
        Assert.Equal(fitted.Select(row => row.Key).Order(), told.Keys.Order());
        Assert.All(told.Values, words => Assert.NotEqual("", words));
    }

    private static string RepositoryFolder()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "CanopySim.sln")))
            folder = Path.GetDirectoryName(folder) ?? throw new FileNotFoundException("CanopySim.sln");
        return folder;
    }

    /// <summary>What stands in a page after a line, up to a mark of its end.</summary>
    private sealed record MarkedSection(string Begin, string End)
    {
        public string In(string page) => page[Place(page)];

        public string Put(string page, string section)
        {
            var place = Place(page);
            return page[..place.Start] + section + page[place.End..];
        }

        private Range Place(string page)
        {
            var begin = page.IndexOf(Begin + "\n", StringComparison.Ordinal);
            var from = begin + Begin.Length + 1;
            var to = begin < 0 ? -1 : page.IndexOf(End, from, StringComparison.Ordinal);
            return to >= 0 ? from..to : throw new InvalidOperationException($"DEVELOPERS.md lacks {Begin} or {End.Trim()} after it");
        }
    }
}
