using CanopySim.Parameters;

namespace CanopySim.Files.Batch;

/// <summary>A plan file as it is written: keys and texts, before scenarios say what a varied key may be.</summary>
internal sealed record PlanText
{
    [KeyHelp("Name of the plan: letters, digits and dashes; results go to results/<name>.")]
    public required string Name { get; init; }

    [KeyHelp("Scenario files, found from the plan's folder.")]
    public required IReadOnlyList<string> Scenarios { get; init; }

    [KeyHelp("Values that hold in every season, as a scenario writes them: rows.spacing: 2.4 m.")]
    public IReadOnlyDictionary<string, string> Set { get; init; } = new Dictionary<string, string>();

    [KeyHelp("Seasons of weather; left out, each scenario's own.")]
    public PlanWeatherText Weather { get; init; } = new();

    [KeyHelp("Keys of the scenarios that differ from season to season.")]
    public IReadOnlyDictionary<string, VariedText> Vary { get; init; } = new Dictionary<string, VariedText>();

    [KeyHelp("How the keys with a distribution are sampled.")]
    public PlanDesignText Design { get; init; } = new();

    [Parameter("1", 1, 100_000, "How often each is repeated with another seed.", Mark = Mark.Given)]
    public int Replicates { get; init; } = 1;

    [KeyHelp("Seed of the design and of the first replicate; the second has the next one, and so on.")]
    public ulong Seed { get; init; } = 1;

    [KeyHelp("How finely light is computed: draft, standard or fine.")]
    public Quality Quality { get; init; } = Quality.Draft;

    [KeyHelp("Last day of every season, month and day as 05-31; left out, the season's own end.")]
    public string? Until { get; init; }

    [KeyHelp("How many seasons are kept in one file, and lost at most when a machine dies.")]
    public PlanShardText Shard { get; init; } = new();
}

/// <summary>Which seasons of weather a plan grows; what is given is crossed.</summary>
internal sealed record PlanWeatherText
{
    [KeyHelp("Years of the record: 2011, or 2008 to 2012, or a list of such.")]
    public IReadOnlyList<string> Years { get; init; } = [];

    [KeyHelp("Weather files in place of the scenarios' own, found from the plan's folder.")]
    public IReadOnlyList<string> Files { get; init; } = [];

    [KeyHelp("Seeds of seasons made like the record's: 1 to 30, or a list.")]
    public IReadOnlyList<string> Seeds { get; init; } = [];
}

/// <summary>How a key differs: a list, a range in even steps, or a distribution.</summary>
internal sealed record VariedText
{
    [KeyHelp("The values, one after another.")]
    public IReadOnlyList<string> Values { get; init; } = [];

    [KeyHelp("Least value of a range or distribution.")]
    public string? From { get; init; }

    [KeyHelp("Greatest value of a range or distribution.")]
    public string? To { get; init; }

    [Parameter("1", 2, 10_000, "Values of a range, its ends among them.", Mark = Mark.Given)]
    public int? Steps { get; init; }

    [KeyHelp("uniform (from, to), normal (mean, standard_deviation), triangular (from, most_likely, to) or lognormal (median, spread).")]
    public DistributionKind? Distribution { get; init; }

    [KeyHelp("Mean of a normal distribution.")]
    public string? Mean { get; init; }

    [KeyHelp("Standard deviation of a normal distribution, in the unit of the key.")]
    public string? StandardDeviation { get; init; }

    [KeyHelp("Peak of a triangular distribution.")]
    public string? MostLikely { get; init; }

    [KeyHelp("Median of a lognormal distribution.")]
    public string? Median { get; init; }

    [Parameter("1", 1.0001, 100, "Spread of a lognormal distribution: two thirds of all lie between the median divided by it and times it.", Mark = Mark.Given)]
    public double? Spread { get; init; }
}

/// <summary>How keys with a distribution are sampled together.</summary>
internal sealed record PlanDesignText
{
    [KeyHelp("random, latin_hypercube, sobol_sequence (even), morris (which keys matter) or saltelli (shares of variance).")]
    public DesignKind Kind { get; init; } = DesignKind.LatinHypercube;

    [Parameter("1", 1, 1_000_000, "Points of the design; of saltelli, those that the design is built from.", Mark = Mark.Given)]
    public int? Points { get; init; }

    [Parameter("1", 1, 100_000, "Paths of a morris design, each as long as there are keys and one more.", Mark = Mark.Given)]
    public int? Trajectories { get; init; }

    [Parameter("1", 2, 100, "Levels of a morris design; even.", Mark = Mark.Given)]
    public int Levels { get; init; } = 4;
}

/// <summary>Size of a shard: seasons, or minutes of one core.</summary>
internal sealed record PlanShardText
{
    [Parameter("1", 1, 100_000, "Seasons in a shard.", Mark = Mark.Given)]
    public int? Items { get; init; }

    [Parameter("1", 0.1, 600, "Minutes that one core has for a shard, by what a season of that quality took on one machine.", Mark = Mark.Given)]
    public double? Minutes { get; init; }
}

/// <summary>A distribution of a varied key.</summary>
public enum DistributionKind
{
    Uniform,
    Normal,
    Triangular,
    Lognormal,
}

/// <summary>How points are laid into the room of the keys with a distribution.</summary>
public enum DesignKind
{
    Random,
    LatinHypercube,
    SobolSequence,
    Morris,
    Saltelli,
}
