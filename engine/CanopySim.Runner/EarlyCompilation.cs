using System.Reflection;
using System.Runtime.CompilerServices;

namespace CanopySim.Runner;

/// <summary>
/// Compiles the model on a second core while the first reads scenario and weather: a draft season spends a sixth of its time in
/// the compiler otherwise.
/// </summary>
public static class EarlyCompilation
{
    /// <summary>What a season runs, in the order in which it does.</summary>
    public static IReadOnlyList<string> Rooms { get; } =
        ["Phenology", "Training", "Plants", "Growth", "Geometry", "Light", "Sky", "Photosynthesis", "Carbon", "Fruit", "Water", "Numerics", "Results", "Assessment"];

    /// <summary>Begins on another thread, where the season may have one and the machine has a core for it.</summary>
    public static void Begin(int threads)
    {
        if (threads >= 2 && Environment.ProcessorCount >= 2) _ = Task.Run(() => Rooms.Sum(Compile));
    }

    /// <summary>Compiles a room; returns how many methods it has.</summary>
    public static int Compile(string room) => typeof(Simulation).Assembly.GetTypes()
        .Where(type => !type.ContainsGenericParameters && type.Namespace == $"CanopySim.{room}")
        .Sum(Compile);

    private static int Compile(Type type)
    {
        var methods = 0;
        const BindingFlags Own =
            BindingFlags.DeclaredOnly | BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic;
        foreach (var member in type.GetMembers(Own))
        {
            if (member is not MethodBase { IsAbstract: false, ContainsGenericParameters: false } method || method.GetMethodBody() is null) continue;
            // How records compare and print, which no season asks for, and properties, which are compiled into their callers.
            if (method.IsDefined(typeof(CompilerGeneratedAttribute), inherit: false)) continue;
            RuntimeHelpers.PrepareMethod(method.MethodHandle);
            methods++;
        }

        return methods;
    }
}
