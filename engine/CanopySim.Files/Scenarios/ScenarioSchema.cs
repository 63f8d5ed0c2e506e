using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using CanopySim.Files.Quantities;
using CanopySim.Parameters;

namespace CanopySim.Files.Scenarios;

/// <summary>
/// The JSON Schema of scenarios (draft 2020-12), made from the types, so that editors complete and check them.
/// </summary>
public static class ScenarioSchema
{
    private const string NumberPattern = @"[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?";

    internal static readonly JsonSerializerOptions Written = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Json()
    {
        var root = Section(SectionShape.Root);
        root["type"] = "object";
        var properties = root["properties"]!.AsObject();
        properties.Insert(0, ScenarioLayers.BasedOn, new JsonObject
        {
            ["description"] = "Another scenario, beside this one; this file then gives only what differs.",
            ["type"] = "string",
        });
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "CanopySim scenario",
            ["description"] = "One block, one season. Quantities carry their units as people write them: 2.4 m, 8 ft, "
                + "86 degF, 30 %.",
        };
        foreach (var (name, value) in root.ToList())
        {
            root.Remove(name);
            schema[name] = value;
        }

        // What a scenario must give, it may take from the one it is based on.
        schema["if"] =
            new JsonObject { ["not"] = new JsonObject { ["required"] = new JsonArray(ScenarioLayers.BasedOn) } };
        schema["then"] = Required(SectionShape.Root);
        return schema.ToJsonString(Written) + "\n";
    }

    internal static JsonObject Section(SectionShape shape)
    {
        var properties = new JsonObject();
        foreach (var key in shape.Keys) properties[key.Name] = Key(key);
        return new JsonObject
        {
            ["type"] = new JsonArray("object", "null"),
            ["additionalProperties"] = false,
            ["properties"] = properties
        };
    }

    private static JsonObject Key(KeyShape key)
    {
        var schema = key.Kind switch
        {
            KeyKind.Quantity => Quantity(key.Parameter!, key.ValueType),
            KeyKind.WholeNumber => new JsonObject { ["type"] = "integer" },
            KeyKind.Flag => new JsonObject { ["type"] = "boolean" },
            KeyKind.Date => new JsonObject { ["type"] = "string", ["format"] = "date" },
            KeyKind.Choice => new JsonObject { ["enum"] = Texts(KeyNames.Choices(key.ValueType)) },
            KeyKind.TextMap =>
                new JsonObject
                {
                    ["type"] = new JsonArray("object", "null"),
                    ["additionalProperties"] = new JsonObject { ["type"] = "string" },
                },
            KeyKind.TextList => new JsonObject
            {
                ["type"] = new JsonArray("array", "string", "number", "null"),
                ["items"] = new JsonObject { ["type"] = new JsonArray("string", "number", "boolean") },
            },
            KeyKind.Section => Section(SectionShape.Of(key.ValueType)),
            KeyKind.SectionMap => new JsonObject
            {
                ["type"] = new JsonArray("object", "null"),
                ["additionalProperties"] = Section(SectionShape.Of(key.ValueType)),
            },
            KeyKind.SectionList => List(Section(SectionShape.Of(key.ValueType))),
            KeyKind.RowList => List(Row(RowShape.Of(key.ValueType))),
            _ => new JsonObject { ["type"] = new JsonArray("string", "number") },
        };
        schema.Insert(0, "description", Description(key));
        if (key.Default is not null && Default(key) is JsonNode value) schema["default"] = value;
        return schema;
    }

    private static JsonObject Quantity(ParameterAttribute parameter, Type type)
    {
        if (parameter.Unit != "1")
        {
            // A number and something after it; the program itself knows every spelling of every unit.
            return new JsonObject { ["type"] = "string", ["pattern"] = $@"^\s*{NumberPattern}\s*(1\s*/)?[^0-9\s.].*$" };
        }

        var number = new JsonObject
        {
            ["type"] = type == typeof(int) ? "integer" : "number",
            ["minimum"] = parameter.Min,
            ["maximum"] = parameter.Max,
        };
        if (type == typeof(int)) return number;
        var percentage = new JsonObject { ["type"] = "string", ["pattern"] = $@"^{NumberPattern}\s*%$" };
        return new JsonObject { ["anyOf"] = new JsonArray(number, percentage) };
    }

    private static JsonObject Row(RowShape shape)
    {
        var cells = new JsonArray();
        for (var i = 0; i < shape.Parameters.Count; i++)
        {
            var cell = Quantity(shape.Parameters[i], typeof(double));
            cell.Insert(0, "description", $"{shape.Parameters[i].Help} {QuantityText.Range(shape.Parameters[i])}.");
            cells.Add(cell);
        }

        return new JsonObject
        {
            ["type"] = "array",
            ["prefixItems"] = cells,
            ["items"] = false,
            ["minItems"] = shape.Parameters.Count
        };
    }

    private static JsonObject List(JsonObject item) =>
        new() { ["type"] = new JsonArray("array", "null"), ["items"] = item };

    // Sections of keys that must be given, and those keys.
    private static JsonObject Required(SectionShape shape)
    {
        var inner = new JsonObject();
        foreach (var key in shape.Keys)
            if (key.Kind == KeyKind.Section && Required(SectionShape.Of(key.ValueType)) is { Count: > 0 } needed)
                inner[key.Name] = needed;
        var names = Texts(shape.Keys.Where(key => key.IsRequired).Select(key => key.Name));
        var schema = new JsonObject();
        if (names.Count > 0)
        {
            schema["type"] = "object";
            schema["required"] = names;
        }

        if (inner.Count > 0) schema["properties"] = inner;
        return schema;
    }

    private static string Description(KeyShape key)
    {
        if (key.Parameter is not ParameterAttribute parameter) return key.Help;
        var mark = parameter.Mark == Mark.Given ? "" : $" {ScenarioStarter.Sureness(parameter)}";
        return $"{key.Help} {QuantityText.Range(parameter)}.{mark}";
    }

    private static JsonNode? Default(KeyShape key) => key.Kind switch
    {
        _ when key.IsRequired => null,
        KeyKind.Quantity when key.Parameter!.Unit == "1" =>
            JsonValue.Create(Convert.ToDouble(key.Default, CultureInfo.InvariantCulture)),
        KeyKind.Quantity or KeyKind.Text or KeyKind.Date or KeyKind.Choice =>
            JsonValue.Create(ValueReader.Show(key.Default, key)),
        KeyKind.WholeNumber => JsonValue.Create(Convert.ToInt64(key.Default, CultureInfo.InvariantCulture)),
        KeyKind.Flag => JsonValue.Create((bool)key.Default!),
        _ => null,
    };

    private static JsonArray Texts(IEnumerable<string> texts) =>
        [.. texts.Select(text => (JsonNode)JsonValue.Create(text))];
}
