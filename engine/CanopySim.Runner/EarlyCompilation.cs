using System.Reflection;
using System.Runtime.CompilerServices;

namespace CanopySim.Runner;

/// <summary>
/// Compiles the model on a second core while the first reads scenario and weather: a draft season spends a sixth of its time in
/// the compiler otherwise.
/// </summary>
internal static class EarlyCompilation
{
    // What a season runs, in the order in which it does.
    private static readonly string[] Rooms =
        ["Phenology", "Training", "Plants", "Growth", "Geometry", "Light", "Sky", "Photosynthesis", "Carbon", "Fruit", "Water", "Numerics", "Results"];

    public static void Begin(int threads)
    {
        if (threads < 2 || Environment.ProcessorCount < 2) return;
        var types = typeof(Simulation).Assembly.GetTypes();
        _ = Task.Run(() =>
        {
            foreach (var room in Rooms)
                foreach (var type in types)
                    if (!type.ContainsGenericParameters && type.Namespace == $"CanopySim.{room}") Compile(type);
        });
    }

    private static void Compile(Type type)
    {
        const BindingFlags Own =
            BindingFlags.DeclaredOnly | BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic;
        foreach (var member in type.GetMembers(Own))
        {
            if (member is MethodBase { IsAbstract: false, ContainsGenericParameters: false } method && method.GetMethodBody() is not null)
                RuntimeHelpers.PrepareMethod(method.MethodHandle);
        }
    }
}
