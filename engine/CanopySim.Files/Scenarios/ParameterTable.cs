using System.Collections;
using System.Globalization;
using System.Text;
using CanopySim.Files.Quantities;
using CanopySim.Files.Report;
using CanopySim.Parameters;
using CanopySim.Phenology;

namespace CanopySim.Files.Scenarios;

/// <summary>
/// A parameter of the model: its key in a scenario, its default with unit, how sure that is and where it comes from.
/// </summary>
public sealed record ParameterRow(string Key, string Value, Mark Mark, string Source);

/// <summary>Every parameter of the model, made from the types: the table in DEVELOPERS.md.</summary>
public static class ParameterTable
{
    public static IReadOnlyList<ParameterRow> Rows() => [.. Of(SectionShape.Root, "")];

    /// <summary>
    /// How many parameters stand on what, then the parameters, then what tells the built-in cultivars apart.
    /// </summary>
    public static string Markdown()
    {
        var rows = Rows();
        var text = new StringBuilder();
        Line(text, "mark", "parameters", "meaning");
        Line(text, "---", "---", "---");
        foreach (var mark in rows.Select(row => row.Mark).Distinct().Order())
            Line(text, Words(mark), $"{rows.Count(row => row.Mark == mark)}", MarkWords.Meaning(mark));
        text.Append('\n');
        Line(text, "key", "value", "mark", "source");
        Line(text, "---", "---", "---", "---");
        foreach (var row in rows) Line(text, $"`{row.Key}`", row.Value, Words(row.Mark), row.Source);
        text.Append('\n');
        AppendCultivars(text);
        return text.ToString();
    }

    private static IEnumerable<ParameterRow> Of(SectionShape section, string path) =>
        section.Keys.SelectMany(key => key.Kind switch
    {
        KeyKind.Quantity => [new ParameterRow(path + key.Name, Value(key), key.Parameter!.Mark, key.Parameter.Source)],
        KeyKind.Section or KeyKind.SectionList => Of(SectionShape.Of(key.ValueType), $"{path}{key.Name}."),
        KeyKind.RowList => Columns(key, $"{path}{key.Name}."),
        _ => [],
    });

    private static string Value(KeyShape key)
    {
        var unit = key.Parameter!.Unit == "1" ? "" : $" [{key.Parameter.Unit}]";
        return key.IsRequired ? $"to be given{unit}"
            : key.Default is null ? $"left out{unit}"
            : ValueReader.Show(key.Default, key);
    }

    // A list of rows has a parameter a column; its default is the column's values.
    private static IEnumerable<ParameterRow> Columns(KeyShape key, string path)
    {
        var shape = RowShape.Of(key.ValueType);
        return shape.Parameters.Select((parameter, column) =>
        {
            var values = ((IEnumerable)key.Default!).Cast<object>().Select(row => shape.Cell(row, column)).ToList();
            if (values.Count == 0) return new ParameterRow(
                path + shape.Names[column], $"left out [{parameter.Unit}]", parameter.Mark, parameter.Source);
            var numbers = values.Select(value => value.ToString(CultureInfo.InvariantCulture)).SkipLast(1)
                .Append(QuantityText.Show(values[^1], parameter.Unit));
            return new ParameterRow(
                path + shape.Names[column], string.Join(", ", numbers), parameter.Mark, parameter.Source);
        });
    }

    // What differs between cultivars; how keys follow from it is said in the model's table.
    private static void AppendCultivars(StringBuilder text)
    {
        Line(text, "`cultivar.from_table`", "flowering sum", "veraison sum", "berry, g", "berries a cluster",
            "clusters a shoot", "blade", "internode", "laterals");
        Line(text, [.. Enumerable.Repeat("---", 9)]);
        foreach (var row in CultivarTable.Rows)
            Line(
                text, $"`{KeyNames.Choice(row.Cultivar)}`", Cell(row.FloweringSum), Cell(row.VeraisonSum),
                    Cell(row.BerryMass),
                Cell(row.BerriesPerCluster), Cell(row.ClustersPerShoot), Cell(row.BladeSize), Cell(row.InternodeLength),
                    Cell(row.Laterals));

        static string Cell(MarkedValue number) => FormattableString.Invariant($"{number.Value} ({Words(number.Mark)})");
    }

    private static string Words(Mark mark) => KeyNames.Snake($"{mark}").Replace('_', ' ');

    private static void Line(StringBuilder text, params string[] cells) =>
        text.Append("| ").AppendJoin(" | ", cells.Select(cell => cell.Replace("|", "\\|", StringComparison.Ordinal)))
            .Append(" |\n");
}
