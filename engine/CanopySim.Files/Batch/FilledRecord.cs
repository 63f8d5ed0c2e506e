using System.Reflection;

namespace CanopySim.Files.Batch;

/// <summary>
/// Makes a record with nothing left out, so that what is written of it shows every name that there can be.
/// </summary>
internal sealed class FilledRecord(IReadOnlyDictionary<Type, object> known)
{
    public T Of<T>() => (T)Of(typeof(T));

    private object Of(Type declared)
    {
        var type = Nullable.GetUnderlyingType(declared) ?? declared;
        if (known.TryGetValue(type, out var value)) return value;
        if (type == typeof(string)) return "text";
        if (type == typeof(DateOnly)) return new DateOnly(2001, 1, 1);
        if (type.IsPrimitive) return Convert.ChangeType(1, type, System.Globalization.CultureInfo.InvariantCulture);
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
            return Array.CreateInstance(type.GetGenericArguments()[0], 0);
        var constructor = type.GetConstructors().MaxBy(one => one.GetParameters().Length)!;
        var arguments = constructor.GetParameters();
        var record = constructor.Invoke([.. arguments.Select(argument => Of(argument.ParameterType))]);
        var given = arguments.Select(argument => argument.Name).ToHashSet();
        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance))
            if (property.SetMethod is not null && !given.Contains(property.Name))
                property.SetValue(record, Of(property.PropertyType));
        return record;
    }
}
