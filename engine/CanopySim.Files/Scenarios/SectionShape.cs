using System.Collections.Concurrent;
using System.Reflection;
using System.Text;
using CanopySim.Parameters;
using CanopySim.Phenology;
using CanopySim.Training;

namespace CanopySim.Files.Scenarios;

/// <summary>What kind of value a scenario key takes.</summary>
internal enum KeyKind
{
    Quantity,
    WholeNumber,
    Text,
    Flag,
    Date,
    Choice,
    TextList,
    TextMap,
    SectionMap,
    Section,
    SectionList,
    RowList,
}

/// <summary>
/// The keys of a section, found from the properties of its type and their attributes, so that a new parameter in the
/// model
/// is read, checked, explained and put into the schema without a line here.
/// </summary>
internal sealed record SectionShape(Type Type, IReadOnlyList<KeyShape> Keys)
{
    private static readonly ConcurrentDictionary<Type, SectionShape> Known = new();

    public static SectionShape Root => Of(typeof(Scenario));

    public static SectionShape Of(Type type) => Known.GetOrAdd(type, Find);

    private static SectionShape Find(Type type)
    {
        var defaults = Activator.CreateInstance(type);
        var keys = type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(property => property.SetMethod is not null)
            // What a record takes from its bases stands first, as in the bases' own files.
            .OrderBy(property => Depth(property.DeclaringType!))
            .ThenBy(property => property.MetadataToken)
            .Select(property => KeyShape.Of(property, defaults));
        return new SectionShape(type, [.. keys]);
    }

    private static int Depth(Type type) => type.BaseType is { } mother ? 1 + Depth(mother) : 0;

    public KeyShape? Find(string name) => Keys.FirstOrDefault(key => key.Name == name);

    /// <summary>The key of a dotted name; items of lists have their number: canopy_work.topping.0.height.</summary>
    public KeyShape? At(string dotted)
    {
        var (shape, parts) = (this, dotted.Split('.'));
        for (var part = 0; part < parts.Length; part++)
        {
            if (shape.Find(parts[part]) is not { } key) return null;
            if (part == parts.Length - 1) return key;
            if (key.Kind == KeyKind.SectionList && uint.TryParse(parts[part + 1], out _)) part++;
            else if (key.Kind != KeyKind.Section) return null;
            shape = Of(key.ValueType);
        }

        return null;
    }

    /// <summary>Dotted names of all keys that stand in no list.</summary>
    public IEnumerable<string> AllKeys() => Keys.SelectMany(key => key.Kind == KeyKind.Section
        ? Of(key.ValueType).AllKeys().Select(inner => $"{key.Name}.{inner}")
        : [key.Name]);
}

/// <summary>A scenario key.</summary>
internal sealed record KeyShape
{
    /// <summary>The key as it is written: vine_spacing.</summary>
    public required string Name { get; init; }

    public required PropertyInfo Property { get; init; }

    public required KeyKind Kind { get; init; }

    /// <summary>The property's type without its question mark; for lists, the type of an item.</summary>
    public required Type ValueType { get; init; }

    public required string Help { get; init; }

    public required bool IsRequired { get; init; }

    /// <summary>The value where the key is left out; null also where the model chooses.</summary>
    public required object? Default { get; init; }

    /// <summary>Unit, range and mark of a quantity; null for other kinds.</summary>
    public required ParameterAttribute? Parameter { get; init; }

    // By name: a library of the charts declares a public type of the same name, so the compiler cannot choose.
    private const string RequiredMember = "System.Runtime.CompilerServices.RequiredMemberAttribute";

    public static KeyShape Of(PropertyInfo property, object? defaults)
    {
        var parameter = property.GetCustomAttribute<ParameterAttribute>();
        var help = parameter?.Help ?? property.GetCustomAttribute<KeyHelpAttribute>()?.Help
            ?? throw new InvalidOperationException(
                $"{property.DeclaringType}.{property.Name} has neither Parameter nor KeyHelp");
        var (kind, type) = KindOf(property.PropertyType, parameter is not null);
        return new KeyShape
        {
            Name = KeyNames.Snake(property.Name),
            Property = property,
            Kind = kind,
            ValueType = type,
            Help = help,
            IsRequired = property.CustomAttributes.Any(attribute => attribute.AttributeType.FullName == RequiredMember),
            Default = defaults is null ? null : property.GetValue(defaults),
            Parameter = parameter,
        };
    }

    private static (KeyKind Kind, Type Type) KindOf(Type declared, bool isParameter)
    {
        var type = Nullable.GetUnderlyingType(declared) ?? declared;
        if (isParameter) return (KeyKind.Quantity, type);
        if (type == typeof(string)) return (KeyKind.Text, type);
        if (type == typeof(bool)) return (KeyKind.Flag, type);
        if (type == typeof(DateOnly)) return (KeyKind.Date, type);
        if (type == typeof(int) || type == typeof(ulong)) return (KeyKind.WholeNumber, type);
        if (type.IsEnum) return (KeyKind.Choice, type);
        if (type == typeof(IReadOnlyDictionary<string, string>)) return (KeyKind.TextMap, type);
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyDictionary<,>))
            return (KeyKind.SectionMap, type.GetGenericArguments()[1]);
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
        {
            var item = type.GetGenericArguments()[0];
            if (item == typeof(string)) return (KeyKind.TextList, item);
            return (item.IsValueType ? KeyKind.RowList : KeyKind.SectionList, item);
        }

        return type.IsClass
            ? (KeyKind.Section, type)
            : throw new NotSupportedException($"a scenario key of type {declared}");
    }
}

/// <summary>How names of the model are written in scenarios.</summary>
internal static class KeyNames
{
    // Forms of trellis and cultivars are spelled with hyphens, as people speak of them; every other choice as keys are.
    private static readonly HashSet<Type> Hyphenated = [typeof(TrellisForm), typeof(KnownCultivar)];

    public static string Snake(string name) => Separated(name, '_');

    public static IEnumerable<string> Choices(Type type) =>
        Enum.GetNames(type).Select(name => Separated(name, Hyphenated.Contains(type) ? '-' : '_'));

    public static string Choice(object value) =>
        Separated(value.ToString()!, Hyphenated.Contains(value.GetType()) ? '-' : '_');

    private static string Separated(string name, char separator)
    {
        var text = new StringBuilder(name.Length + 8);
        foreach (var letter in name)
        {
            if (char.IsUpper(letter) && text.Length > 0) text.Append(separator);
            text.Append(char.ToLowerInvariant(letter));
        }

        return text.ToString();
    }
}
