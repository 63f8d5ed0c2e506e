using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using CanopySim.Files.Text;

namespace CanopySim.Files.Results;

/// <summary>Writes one JSON object with numbers as <see cref="NumberText"/> has them.</summary>
internal sealed class JsonFile
{
    private readonly ArrayBufferWriter<byte> _buffer = new();
    private readonly Utf8JsonWriter _json;

    public JsonFile()
    {
        // Names of blocks keep their letters; nothing here is pasted into a page.
        _json = new Utf8JsonWriter(
            _buffer,
            new JsonWriterOptions
            {
                Indented = true,
                NewLine = "\n",
                Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping
            });
        _json.WriteStartObject();
    }

    public JsonFile Text(string name, string? value)
    {
        _json.WriteString(name, value);
        return this;
    }

    public JsonFile Date(string name, DateOnly? value) =>
        Text(name, value is DateOnly date ? NumberText.Date(date) : null);

    public JsonFile Whole(string name, long value)
    {
        _json.WriteNumber(name, value);
        return this;
    }

    public JsonFile Seed(string name, ulong value)
    {
        _json.WriteNumber(name, value);
        return this;
    }

    /// <summary>A number to six significant digits, or null.</summary>
    public JsonFile Number(string name, double? value) =>
        Raw(name, value is double number ? NumberText.Rounded(number, name) : "null");

    /// <summary>A number with every digit: for closures, which are judged against 1e-9.</summary>
    public JsonFile Exact(string name, double value) => Raw(name, NumberText.Exact(value, name));

    public JsonFile Object(string name, Action<JsonFile> content)
    {
        _json.WriteStartObject(name);
        content(this);
        _json.WriteEndObject();
        return this;
    }

    /// <summary>An object, or null where there is nothing to tell.</summary>
    public JsonFile ObjectOrNull<T>(string name, T? value, Action<JsonFile, T> content)
        where T : class
    {
        if (value is not null) return Object(name, json => content(json, value));
        _json.WriteNull(name);
        return this;
    }

    public JsonFile List<T>(string name, IEnumerable<T> items, Action<JsonFile, T> content)
    {
        _json.WriteStartArray(name);
        foreach (var item in items)
        {
            _json.WriteStartObject();
            content(this, item);
            _json.WriteEndObject();
        }

        _json.WriteEndArray();
        return this;
    }

    public JsonFile Texts(string name, IEnumerable<string> items)
    {
        _json.WriteStartArray(name);
        foreach (var item in items) _json.WriteStringValue(item);
        _json.WriteEndArray();
        return this;
    }

    public JsonFile ExactList(string name, IEnumerable<double> items)
    {
        _json.WriteStartArray(name);
        foreach (var item in items) _json.WriteRawValue(NumberText.Exact(item, name));
        _json.WriteEndArray();
        return this;
    }

    public string Finish()
    {
        _json.WriteEndObject();
        _json.Flush();
        return Encoding.UTF8.GetString(_buffer.WrittenSpan) + "\n";
    }

    private JsonFile Raw(string name, string number)
    {
        _json.WritePropertyName(name);
        _json.WriteRawValue(number);
        return this;
    }
}
