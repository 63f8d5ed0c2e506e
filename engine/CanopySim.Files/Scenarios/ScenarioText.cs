using System.Text.RegularExpressions;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace CanopySim.Files.Scenarios;

/// <summary>
/// Turns YAML text into nodes, strictly: one document, no anchors, aliases or tags, no key twice. A scenario needs none
/// of
/// these, and aliases let a small file unfold into a huge one.
/// </summary>
internal static partial class ScenarioText
{
    public const int DeepestNesting = 32;

    public const int MostNodes = 100_000;

    /// <summary>The root node of the text; null where there is nothing but comments.</summary>
    public static ScenarioNode? Parse(string text, string file, bool withLines = true)
    {
        CheckIndentation(text, file);
        return new Reader(text, file, withLines).ReadDocument();
    }

    // YAML forbids it too, but the library then names the first line and not the one with the tab.
    private static void CheckIndentation(string text, string file)
    {
        var line = 1;
        foreach (var content in text.AsSpan().EnumerateLines())
        {
            var indentation = content[..(content.Length - content.TrimStart(" \t").Length)];
            if (indentation.Contains('\t') && indentation.Length < content.Length && content[indentation.Length] != '#')
                throw new InputError(
                    new InputPlace(file, line, indentation.IndexOf('\t') + 1), "a tab in the indentation", "spaces");
            line++;
        }
    }

    private sealed class Reader(string text, string file, bool withLines)
    {
        private readonly Parser _parser = new(new StringReader(text));
        private int _nodes;

        public ScenarioNode? ReadDocument()
        {
            Next();
            if (Next() is StreamEnd) return null;
            var root = ReadNode(Next(), 1);
            Next();
            var after = Next();
            if (after is not StreamEnd) throw new InputError(At(after), "a second document", "one document in a file");
            return root;
        }

        private ScenarioNode ReadNode(ParsingEvent current, int depth)
        {
            var place = At(current);
            if (current is AnchorAlias alias)
                throw new InputError(
                    place, $"the alias *{alias.Value.Value}", "values written out: aliases are not read");
            if (current is NodeEvent node) CheckPlain(node, place);
            if (depth > DeepestNesting)
                throw new InputError(
                    place, $"nesting deeper than {DeepestNesting}", "a scenario, which nests four deep");
            if (++_nodes > MostNodes)
                throw new InputError(place, $"more than {MostNodes} values", "a scenario, which has a few hundred");
            return current switch
            {
                Scalar scalar => ReadValue(scalar, place),
                SequenceStart => ReadList(place, depth),
                MappingStart => ReadMap(place, depth),
                _ => throw new InputError(place, "text that is no YAML", "keys with values"),
            };
        }

        private ValueNode ReadValue(Scalar scalar, InputPlace place)
        {
            foreach (var letter in scalar.Value)
            {
                if (!char.IsControl(letter)) continue;
                throw new InputError(
                    place, $"a value with the control character U+{(int)letter:X4}", "a value on one line");
            }

            return new ValueNode(place, scalar.Value, scalar.Style is not (ScalarStyle.Plain or ScalarStyle.Any));
        }

        private ListNode ReadList(InputPlace place, int depth)
        {
            var items = new List<ScenarioNode>();
            while (Next() is var current and not SequenceEnd) items.Add(ReadNode(current, depth + 1));
            return new ListNode(place, items);
        }

        private MapNode ReadMap(InputPlace place, int depth)
        {
            var entries = new Dictionary<string, MapEntry>(StringComparer.Ordinal);
            var ordered = new List<MapEntry>();
            while (Next() is var current and not MappingEnd)
            {
                var key = ReadNode(current, depth + 1) is ValueNode { IsEmpty: false } value
                    ? value
                    : throw new InputError(At(current), "a key that is no name", "a name before the colon");
                if (entries.TryGetValue(key.Text, out var first))
                {
                    var where = first.Place.Line is int line ? $" (first on line {line})" : "";
                    throw new InputError(
                        key.Place with { Column = null },
                        $"the key {InputError.Quote(key.Text)} twice{where}",
                        "each key once");
                }

                var entry = new MapEntry(key.Text, key.Place with { Column = null }, ReadNode(Next(), depth + 1));
                entries.Add(key.Text, entry);
                ordered.Add(entry);
            }

            return new MapNode(place, ordered);
        }

        private void CheckPlain(NodeEvent node, InputPlace place)
        {
            if (!node.Anchor.IsEmpty)
                throw new InputError(
                    place, $"the anchor &{node.Anchor.Value}", "values without anchors: aliases are not read");
            if (!node.Tag.IsEmpty)
                throw new InputError(place, $"the tag {InputError.Quote(node.Tag.Value)}", "values without tags");
        }

        private ParsingEvent Next()
        {
            try
            {
                if (_parser.MoveNext() && _parser.Current is { } current) return current;
                throw new InputError(new InputPlace(file), "text that ends too early", "a whole YAML document");
            }
            catch (YamlException error)
            {
                var place = withLines
                    ? new InputPlace(file, (int)error.Start.Line, (int)error.Start.Column)
                    : new InputPlace(file);
                var found = Position().Replace(error.Message, "").TrimEnd('.', ' ');
                throw new InputError(place, $"text that is no YAML ({found})", "keys with values, indented by spaces");
            }
            catch (Exception error) when (error is not InputError)
            {
                // The library's scanner has let other exceptions out on broken text; to the reader it is broken text
                // all the same.
                throw new InputError(
                    new InputPlace(file),
                    $"text that is no YAML ({error.Message})",
                    "keys with values, indented by spaces");
            }
        }

        private InputPlace At(ParsingEvent current) =>
            withLines ? new InputPlace(file, (int)current.Start.Line, (int)current.Start.Column) : new InputPlace(file);
    }

    [GeneratedRegex(@"^\((?:Line|\().*?\):\s*|\s*Line: \d+, Col: \d+, Idx: \d+")]
    private static partial Regex Position();
}
