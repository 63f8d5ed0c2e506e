using System.Globalization;
using System.Text;
using CanopySim.Files.Batch;
using CanopySim.Files.Tests.Scenarios;
using Xunit;

namespace CanopySim.Files.Tests.Batch;

/// <summary>Writes plans into a folder of their own, with a small scenario and two years of weather beside them.</summary>
internal sealed class TestPlan : IDisposable
{
    /// <summary>The least that a plan says; two lines.</summary>
    public const string Least = """
        name: small-plan
        scenarios: [block.yaml]

        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("canopysim-plan-").FullName;

    public TestPlan()
    {
        Write("block.yaml", TestScenario.Least + "season: {year: 2014}\ntrellis: {form: upright-hedge}\n");
        Write("other.yaml", "based_on: block.yaml\nrows: {spacing: 3 m}\n");
        Write("weather.csv", Weather());
    }

    public string At(string name) => Path.Combine(_folder, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(At(name), text);
        return At(name);
    }

    public BatchPlan Read(string text) => PlanFile.Read(Write("plan.yaml", text));

    /// <summary>The message of the error that reading gives, without the folder.</summary>
    public string Message(string text) =>
        Assert.Throws<InputError>(() => Read(text)).Message.Replace(_folder + Path.DirectorySeparatorChar, "");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    // Two invented years: warm enough in summer for leaves, and nothing more is asked of them.
    private static string Weather()
    {
        var text = new StringBuilder("date,tmin,tmax\n");
        for (var day = new DateOnly(2014, 1, 1); day.Year < 2016; day = day.AddDays(1))
        {
            var season = Math.Cos(2 * Math.PI * (day.DayOfYear - 200) / 365);
            text.Append(CultureInfo.InvariantCulture, $"{day:yyyy-MM-dd},{7 + (6 * season):0.0},{17 + (9 * season):0.0}\n");
        }

        return text.ToString();
    }
}
