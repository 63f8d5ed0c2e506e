using System.Collections;
using System.Text;
using System.Text.Json;

namespace CanopySim.Files.Scenarios;

/// <summary>
/// Writes a scenario with every value it has, so that reading the text gives the same scenario whatever the defaults
/// become.
/// </summary>
public static class ScenarioWriter
{
    /// <param name="scenario">The scenario.</param>
    /// <param name="remark">Lines for its head, without their signs of comment.</param>
    public static string Text(Scenario scenario, IEnumerable<string> remark)
    {
        var text = new StringBuilder();
        foreach (var line in remark) text.Append("# ").Append(line).Append('\n');
        WriteSection(text, SectionShape.Root, scenario, "");
        return text.ToString();
    }

    private static void WriteSection(StringBuilder text, SectionShape shape, object section, string indent)
    {
        foreach (var key in shape.Keys)
        {
            var value = key.Property.GetValue(section);
            if (value is null || value is ICollection { Count: 0 }) continue;
            switch (key.Kind)
            {
                case KeyKind.Section:
                    text.Append(indent).Append(key.Name).Append(":\n");
                    WriteSection(text, SectionShape.Of(key.ValueType), value, indent + "  ");
                    break;
                case KeyKind.SectionList:
                    WriteList(text, key, (IEnumerable)value, indent);
                    break;
                case KeyKind.TextMap:
                    text.Append(indent).Append(key.Name).Append(":\n");
                    foreach (var (name, word) in (IReadOnlyDictionary<string, string>)value)
                        text.Append(indent).Append("  ").Append(Quoted(name)).Append(": ").Append(Quoted(word))
                            .Append('\n');
                    break;
                case KeyKind.RowList:
                    Line(text, indent, key, RowShape.Of(key.ValueType).Show((IEnumerable)value));
                    break;
                case KeyKind.Text:
                    Line(text, indent, key, Quoted((string)value));
                    break;
                default:
                    Line(text, indent, key, ValueReader.Show(value, key));
                    break;
            }
        }
    }

    // Items stand two columns in; the dash takes the place of the first key's indentation.
    private static void WriteList(StringBuilder text, KeyShape key, IEnumerable items, string indent)
    {
        text.Append(indent).Append(key.Name).Append(":\n");
        foreach (var item in items)
        {
            var inner = new StringBuilder();
            WriteSection(inner, SectionShape.Of(key.ValueType), item, indent + "    ");
            if (inner.Length == 0) continue;
            inner[indent.Length + 2] = '-';
            text.Append(inner);
        }
    }

    private static void Line(StringBuilder text, string indent, KeyShape key, string value) =>
        text.Append(indent).Append(key.Name).Append(": ").Append(value).Append('\n');

    // A JSON string is a YAML one in double quotes.
    private static string Quoted(string word) => JsonSerializer.Serialize(word);
}
