using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Security.Cryptography;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Tests.Light;

// One line a quantity, "scene name hash", and first whether the processor's vectors are in use.
Console.WriteLine($"vectors {Vector128.IsHardwareAccelerated} {Vector256.IsHardwareAccelerated}");
for (var number = 0; number < 12; number++) Print($"odd {number}", OddScenes.Of(number), [0, 1, 2], number);
Print("hedge", Program.Hedge(), [0, 1], 3);

static void Print(string name, Scene scene, int[] turns, int number)
{
    var geometry = LightGeometry.Build(
        scene, SkyRings.Spiral(20), new LightQuality { SkyDirectionCount = 20, SkyPixel = 0.03, SunPixel = 0.01, SolverTolerance = 1e-5 }, 1);
    IncidentLight[] hours =
    [
        .. turns.Select(turn => new IncidentLight
        {
            SunDirection = OddScenes.Sun(number, scene.Cell, turn),
            DirectNormalPar = 400,
            DirectNormalNir = 380,
            DiffuseHorizontalPar = 70,
            DiffuseHorizontalNir = 30,
        }),
    ];
    var (suns, matrix, light) = (geometry.Suns.Of(hours, 1), geometry.Matrix, geometry.Solve(hours, new Optics(), 1));
    Line("scene", scene.Corners);
    Line("suns", [.. suns.SelectMany(sun => sun!.PowerOfNode)]);
    Line("shares", light.SunlitShare);
    Line("links", [.. matrix.Starts.Select(start => (float)start), .. matrix.Senders.Select(sender => (float)sender), .. matrix.Counts]);
    Line("sky", [.. matrix.SkyStarts.Select(start => (float)start), .. matrix.SkyDirections.Select(direction => (float)direction), .. matrix.SkyCounts]);
    Line("par", light.AbsorbedPar);
    Line("nir", light.AbsorbedNir);
    Line("budgets", light.ParBudgets.Concat(light.NirBudgets).ToArray());

    void Line<T>(string what, T[] values)
        where T : unmanaged => Console.WriteLine($"{name} {what} {Convert.ToHexString(SHA256.HashData(MemoryMarshal.AsBytes<T>(values)))}");
}

/// <summary>Closed and open parts of a hedge, as the odd scenes have few of.</summary>
internal static partial class Program
{
    // Blades on a lattice, turned by whole numbers: no sine, no square root.
    internal static Scene Hedge()
    {
        var scenes = new RandomScenes(new Cell(1, 0.8));
        for (var i = 0; i < 60; i++)
        {
            var corner = new Vector3(0.4f + (0.02f * (i % 11)), 0.1f * (i % 8), 0.3f + (0.01f * i));
            scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), corner, new Vector3(0.08f, 0.01f * (i % 7), 0.02f * (i % 5)), new Vector3(-0.01f * (i % 6), 0.09f, 0.03f - (0.01f * (i % 9))));
        }

        scenes.AddBox(SurfaceKind.Wood, new Vector3(0.5f, 0.2f, 0.01f), new Vector3(0.04f, 0.04f, 0.9f));
        return scenes.Build();
    }
}
