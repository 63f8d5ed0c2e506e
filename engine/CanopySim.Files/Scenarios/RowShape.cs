using System.Collections;
using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using CanopySim.Files.Quantities;
using CanopySim.Parameters;

namespace CanopySim.Files.Scenarios;

/// <summary>
/// A row of quantities that is written as a list, such as a point of the leaf age curve: [30 d, 0.9].
/// </summary>
internal sealed class RowShape
{
    private static readonly ConcurrentDictionary<Type, RowShape> Known = new();

    private readonly ConstructorInfo _constructor;
    private readonly PropertyInfo[] _properties;

    private RowShape(Type type)
    {
        _constructor = type.GetConstructors().Single(constructor => constructor.GetParameters().Length > 0);
        _properties = [.. _constructor.GetParameters().Select(parameter => type.GetProperty(parameter.Name!)!)];
        Parameters = [.. _properties.Select(property => property.GetCustomAttribute<ParameterAttribute>()
            ?? throw new InvalidOperationException($"{type}.{property.Name} has no Parameter"))];
        Names = [.. _properties.Select(property => KeyNames.Snake(property.Name))];
    }

    public IReadOnlyList<ParameterAttribute> Parameters { get; }

    public IReadOnlyList<string> Names { get; }

    public string Example =>
        $"[{string.Join(", ", Parameters.Select(parameter => QuantityText.Show(parameter.Max, parameter.Unit)))}]";

    public static RowShape Of(Type type) => Known.GetOrAdd(type, static found => new RowShape(found));

    public object Create(object[] values) => _constructor.Invoke(values);

    /// <summary>Rows as a scenario writes them.</summary>
    public string Show(IEnumerable rows) => $"[{string.Join(", ", rows.Cast<object>().Select(Show))}]";

    /// <summary>The value of a row in a column, in its parameter's unit.</summary>
    public double Cell(object row, int column) =>
        Convert.ToDouble(_properties[column].GetValue(row), CultureInfo.InvariantCulture);

    private string Show(object row)
    {
        var cells = Parameters.Select((parameter, i) => QuantityText.Show(Cell(row, i), parameter.Unit));
        return $"[{string.Join(", ", cells)}]";
    }
}
