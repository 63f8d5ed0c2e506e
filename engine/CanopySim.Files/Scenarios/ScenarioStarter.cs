using System.Text;
using CanopySim.Files.Quantities;
using CanopySim.Parameters;
using CanopySim.Training;

namespace CanopySim.Files.Scenarios;

/// <summary>
/// Writes a scenario to start from, made from the types: what a grower gives is written out, what has a default is
/// commented
/// out with its value, unit, mark and help.
/// </summary>
internal static class ScenarioStarter
{
    // Examples for keys that have no default. A key that is not here gets the middle of its range.
    private static readonly Dictionary<string, string> Examples = new(StringComparer.Ordinal)
    {
        ["name"] = "my block",
        ["site.latitude"] = "47.6 deg",
        ["site.longitude"] = "-122.3 deg",
        ["site.time_zone"] = "America/Los_Angeles",
        ["weather.file"] = "weather.csv",
        ["season.year"] = "2014",
        ["season.budbreak"] = "2014-04-15",
        ["season.harvest_date"] = "2014-09-25",
        ["cultivar.from_table"] = "pinot-noir",
        ["trellis.cordon_height"] = "0.9 m",
        ["trellis.top_wire_height"] = "2 m",
        ["trellis.foliage_width"] = "0.35 m",
        ["trellis.lower_cordon_height"] = "1.0 m",
        ["trellis.head_height"] = "0.5 m",
        ["trellis.cordon_distance"] = "1.2 m",
        ["trellis.wall_tilt"] = "12 deg",
        ["trellis.catch_wires"] = "[[1.2 m, 0.3 m], [1.5 m, 0.35 m]]",
        ["carbon.perennial_mass"] = "3 kg",
        ["canopy_work.topping.height"] = "2.1 m",
        ["canopy_work.topping.nodes"] = "16",
        ["canopy_work.shoot_thinning.when_shoots_reach"] = "0.2 m",
        ["canopy_work.shoot_thinning.shoots_per_meter"] = "12 1/m",
        ["canopy_work.shoot_thinning.shoots_per_vine"] = "18",
        ["canopy_work.side_hedging.width"] = "0.5 m",
        ["canopy_work.leaf_removal.from"] = "0 m",
        ["canopy_work.leaf_removal.to"] = "0.4 m",
        ["canopy_work.lateral_removal.from"] = "0 m",
        ["canopy_work.lateral_removal.to"] = "0.4 m",
        ["canopy_work.cluster_thinning.clusters_per_shoot"] = "1",
        ["canopy_work.cluster_thinning.share"] = "0.3",
        ["canopy_work.sprays.label"] = "first cover",
        ["canopy_work.sprays.from"] = "0 m",
        ["canopy_work.sprays.to"] = "1.2 m",
        ["soil.irrigation.amount"] = "20 mm",
    };

    private static readonly Dictionary<string, string> StepExamples = new(StringComparer.Ordinal)
    {
        ["on"] = "2014-07-01",
        ["stage"] = "bloom",
        ["days_after"] = "10",
        ["when_shoots_reach"] = "1.3 m",
    };

    // Without these a scenario means another place than the reader's.
    private static readonly HashSet<string> AlwaysShown = ["site.time_zone", "trellis.form"];

    public static string Write()
    {
        var text = new StringBuilder();
        text.AppendLine(
            "# A scenario: one block, one season. Quantities carry their units as people write them: 2.4 m, 8 ft, 86 "
                + "degF, 30 %.");
        text.AppendLine(
            "# A line that starts with # is not read; remove the # to give a value of your own. What is left out "
                + "takes the value shown.");
        text.AppendLine(
            "# The marks say how sure a default is: published, derived, recalled (from memory), common practice, "
                + "fitted, assumed.");
        text.AppendLine(
            "# based_on: other.yaml    would take everything from another scenario but what is given here.");
        WriteSection(text, SectionShape.Root, "", "");
        return text.ToString().ReplaceLineEndings("\n");
    }

    private static void WriteSection(StringBuilder text, SectionShape shape, string path, string indent)
    {
        foreach (var key in shape.Keys)
        {
            var dotted = path + key.Name;
            switch (key.Kind)
            {
                case KeyKind.Section:
                    text.AppendLine().AppendLine($"{indent}{key.Name}:    # {key.Help}");
                    WriteSection(text, SectionShape.Of(key.ValueType), dotted + ".", indent + "  ");
                    break;
                case KeyKind.SectionList:
                    WriteList(text, key, dotted, indent);
                    break;
                case KeyKind.TextMap:
                    text.AppendLine($"{indent}# {key.Name}: {{}}    # {key.Help}");
                    break;
                default:
                    text.AppendLine(
                        $"{indent}{(IsWritten(key, dotted) ? "" : "# ")}{key.Name}: {Value(key, dotted)}    # "
                            + $"{Remark(key)}");
                    break;
            }
        }
    }

    private static void WriteList(StringBuilder text, KeyShape key, string dotted, string indent)
    {
        text.AppendLine($"{indent}# {key.Name}:    # {key.Help}");
        var dash = "- ";
        foreach (var inner in SectionShape.Of(key.ValueType).Keys)
        {
            text.AppendLine(
                $"{indent}#   {dash}{inner.Name}: {Value(inner, $"{dotted}.{inner.Name}")}    # {Remark(inner)}");
            dash = "  ";
        }
    }

    private static bool IsWritten(KeyShape key, string dotted) =>
        key.IsRequired || AlwaysShown.Contains(dotted)
            || (key.Parameter?.Mark == Mark.Given && key.Default is not null);

    private static string Value(KeyShape key, string dotted)
    {
        if (Examples.TryGetValue(dotted, out var example)) return example;
        // Times of work are alike in every list.
        if (StepExamples.TryGetValue(key.Name, out var time)
            && key.Property.DeclaringType == typeof(WorkStep)) return time;
        if (key.Kind == KeyKind.RowList)
            return RowShape.Of(key.ValueType).Show((System.Collections.IEnumerable)key.Default!);
        if (key.Default is not null && !(key.IsRequired && key.Parameter is not null))
            return ValueReader.Show(key.Default, key);
        return key.Parameter is ParameterAttribute parameter
            ? QuantityText.Show((parameter.Min + parameter.Max) / 2, parameter.Unit)
            : "1";
    }

    private static string Remark(KeyShape key)
    {
        var parts = new List<string> { key.Help };
        if (key.Parameter is ParameterAttribute parameter)
        {
            parts.Add($"{QuantityText.Range(parameter)}.");
            if (parameter.Mark != Mark.Given) parts.Add(Sureness(parameter));
        }
        else if (key.Kind == KeyKind.Choice)
        {
            parts.Add($"One of {string.Join(", ", KeyNames.Choices(key.ValueType))}.");
        }
        else if (key.Kind == KeyKind.RowList
            && RowShape.Of(key.ValueType).Parameters[^1] is { Source.Length: > 0 } last)
        {
            parts.Add(Sureness(last));
        }

        return string.Join(" ", parts);
    }

    /// <summary>How sure a default is, and where it comes from.</summary>
    internal static string Sureness(ParameterAttribute parameter) => (parameter.Mark, parameter.Source) switch
    {
        (Mark.Recalled, "") => "From memory.",
        (Mark.Recalled, var source) => $"From memory: {source}.",
        (Mark.CommonPractice, "") => "Common practice, no source.",
        (Mark.CommonPractice, var source) => $"Common practice: {source}.",
        (var mark, "") => $"{mark}.",
        (var mark, var source) => $"{mark}: {source}.",
    };
}
