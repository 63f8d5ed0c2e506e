using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using System.Runtime.InteropServices;

namespace CanopySim.Tests.RayTracing.Embree;

/// <summary>Seconds of one run over a set of rays.</summary>
/// <param name="Processor">Processor time of the thread [s].</param>
/// <param name="Wall">Time by the clock [s].</param>
/// <param name="Hits">Rays that hit or are blocked.</param>
public readonly record struct TracedSet(double Processor, double Wall, int Hits);

/// <summary>
/// Embree behind our own small program, built with g++ where this runs: it reads triangles and sets of rays from a file, then
/// answers questions. Build-time needs are the Debian packages g++ and libembree-dev, as tests/run.sh lists them.
/// </summary>
public sealed class EmbreeWitness : IDisposable
{
    private readonly string _folder;
    private readonly Process _process;

    /// <param name="program">What <see cref="Build"/> made.</param>
    /// <param name="corners">Three corners a triangle [m].</param>
    /// <param name="sets">Sets of rays.</param>
    /// <param name="quality">low, medium or high.</param>
    /// <param name="flags">r for robust, f for the questions with an excepted triangle, - for neither.</param>
    public EmbreeWitness(string program, ReadOnlySpan<Vector3> corners, GivenRay[][] sets, string quality, string flags)
    {
        _folder = Directory.CreateTempSubdirectory("canopysim-embree").FullName;
        var file = Path.Combine(_folder, "rays.bin");
        using (var writer = new BinaryWriter(File.Create(file)))
        {
            writer.Write(corners.Length / 3);
            writer.Write(MemoryMarshal.AsBytes(corners));
            writer.Write(sets.Length);
            foreach (var set in sets)
            {
                writer.Write(set.Length);
                writer.Write(MemoryMarshal.AsBytes(set.AsSpan()));
            }
        }

        _process = Process.Start(new ProcessStartInfo(program, [file, quality, flags]) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        BuildSeconds = Answer()[0];
    }

    public double BuildSeconds { get; }

    /// <summary>Builds the program into a folder; returns its path, or says in <paramref name="problem"/> what is missing.</summary>
    public static string? Build(string source, string folder, out string problem)
    {
        var program = Path.Combine(folder, "embree_rays");
        try
        {
            using var compiler = Process.Start(new ProcessStartInfo("g++", ["-O3", "-march=native", "-std=c++17", "-o", program, source, "-lembree3"])
            {
                RedirectStandardError = true,
                Environment = { ["LC_ALL"] = "C" },
            })!;
            problem = compiler.StandardError.ReadToEnd();
            compiler.WaitForExit();
            return compiler.ExitCode == 0 ? program : null;
        }
        catch (Win32Exception error)
        {
            problem = error.Message;
            return null;
        }
    }

    /// <summary>Whether a build failed because a package is not there, and not by a fault of ours.</summary>
    public static bool IsMissing(string problem) =>
        new[] { "process 'g++'", "embree3/rtcore.h: No such file", "cannot find -lembree3" }.Any(sign => problem.Contains(sign, StringComparison.Ordinal));

    /// <summary>Any hit beyond a distance [m], the triangle of origin included.</summary>
    public TracedSet Occluded(int set, float near) => Traced(Ask("occluded", set, near.ToString(CultureInfo.InvariantCulture)));

    /// <summary>The closest hit beyond a distance [m], the triangle of origin included.</summary>
    public TracedSet Closest(int set, float near) => Traced(Ask("closest", set, near.ToString(CultureInfo.InvariantCulture)));

    /// <summary>Whether each ray is blocked by a triangle other than the excepted one.</summary>
    public bool[] OccludedExcept(int set)
    {
        var file = Path.Combine(_folder, "answers.bin");
        Ask("occluded-except", set, file);
        return [.. MemoryMarshal.Cast<byte, int>(File.ReadAllBytes(file)).ToArray().Select(answer => answer != 0)];
    }

    /// <summary>Triangle (−1 for none) and distance [m] of the closest hit of each ray but the excepted triangle.</summary>
    public (int Triangle, float Distance)[] ClosestExcept(int set)
    {
        var file = Path.Combine(_folder, "answers.bin");
        Ask("closest-except", set, file);
        return MemoryMarshal.Cast<byte, (int, float)>(File.ReadAllBytes(file)).ToArray();
    }

    public void Dispose()
    {
        _process.StandardInput.Close();
        _process.WaitForExit();
        _process.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static TracedSet Traced(double[] numbers) => new(numbers[0], numbers[1], (int)numbers[2]);

    private double[] Ask(string question, int set, string where)
    {
        _process.StandardInput.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{question} {set} {where}"));
        _process.StandardInput.Flush();
        return Answer();
    }

    private double[] Answer()
    {
        var line = _process.StandardOutput.ReadLine() ?? throw new InvalidOperationException("embree_rays ended early");
        return [.. line.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
    }
}
