using System.Runtime.InteropServices;
using System.Text.RegularExpressions;
using Xunit;

namespace CanopySim.Runner.Tests.Packages;

/// <summary>The packages as their users meet them: a library with its example, a tool, and a folder for cluster nodes.</summary>
public sealed partial class PackagesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_example_of_the_packages_compiles_and_grows_a_season()
    {
        Pack("engine/CanopySim", "engine/CanopySim.Files");
        var project = Directory.CreateDirectory(_folder.File("example")).FullName;
        var page = File.ReadAllText(Path.Combine(RunnerProcess.Repository, "engine", "PACKAGE.md"));
        File.WriteAllText(Path.Combine(project, "Program.cs"), Example().Match(page).Groups["code"].Value);
        File.WriteAllText(Path.Combine(project, "example.csproj"), ProjectText());
        Dotnet(project, "build", "-c", "Release", "-o", "bin");
        var block = Path.Combine(RunnerProcess.Repository, "scenarios", "short-spring", "scenario.yaml");
        var run = Dotnet(project, Path.Combine("bin", "example.dll"), block);
        Assert.Matches(@"^Short spring: bloom \d{4}-\d\d-\d\d,", run.Output);
        Assert.StartsWith("date,stage,", File.ReadAllText(Path.Combine(project, "days.csv")));
    }

    [Fact]
    public void The_tool_package_installs_and_checks_a_scenario()
    {
        Pack("engine/CanopySim.Runner");
        Dotnet(
            _folder.Path, "tool", "install", "CanopySim.Tool", "--tool-path", _folder.File("tools"), "--add-source", _folder.File("feed"),
            "--version", Version());
        var program = Path.Combine(_folder.File("tools"), OperatingSystem.IsWindows() ? "canopysim.exe" : "canopysim");
        Assert.Contains("USAGE", RunnerProcess.Start(program, _folder.Path, "--help").Output);
        var check = RunnerProcess.Start(program, _folder.Path, "check", RunnerProcess.FirstSeason);
        Assert.True(check.ExitCode == 0, check.ToString());
        Assert.Contains("First season", check.Output);
    }

    [Fact]
    public void A_self_contained_folder_runs_without_dotnet()
    {
        Dotnet(
            RunnerProcess.Repository, "publish", "engine/CanopySim.Runner", "-c", "Release", "-r", RuntimeInformation.RuntimeIdentifier,
            "--self-contained", "--artifacts-path", _folder.File("artifacts"), "-p:RunAnalyzers=false", "-o", _folder.File("node"));
        var program = Path.Combine(_folder.File("node"), OperatingSystem.IsWindows() ? "canopysim.exe" : "canopysim");
        var check = RunnerProcess.Start(
            program, _folder.Path, new Dictionary<string, string> { ["PATH"] = "/usr/bin:/bin", ["DOTNET_ROOT"] = _folder.File("nowhere") },
            "check", RunnerProcess.FirstSeason);
        Assert.True(check.ExitCode == 0, check.ToString());
        Assert.Contains("First season", check.Output);
    }

    private void Pack(params string[] projects)
    {
        foreach (var project in projects)
            Dotnet(RunnerProcess.Repository, "pack", project, "-c", "Release", "--no-build", "-o", _folder.File("feed"));
    }

    private static RunnerOutcome Dotnet(string folder, params string[] arguments)
    {
        var outcome = RunnerProcess.Start("dotnet", folder, arguments);
        Assert.True(outcome.ExitCode == 0, $"dotnet {string.Join(' ', arguments)}: {outcome}");
        return outcome;
    }

    // A cache of its own for the packages under test; whatever else they need lies where the build of this repository put it.
    private static string ProjectText() =>
        $"""
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <OutputType>Exe</OutputType>
            <TargetFramework>net10.0</TargetFramework>
            <Nullable>enable</Nullable>
            <ImplicitUsings>enable</ImplicitUsings>
            <TreatWarningsAsErrors>true</TreatWarningsAsErrors>
            <InvariantGlobalization>true</InvariantGlobalization>
            <UseCurrentRuntimeIdentifier>true</UseCurrentRuntimeIdentifier>
            <SelfContained>false</SelfContained>
            <RestoreSources>../feed</RestoreSources>
            <RestorePackagesPath>../cache</RestorePackagesPath>
            <RestoreFallbackFolders>{GlobalPackages()}</RestoreFallbackFolders>
          </PropertyGroup>
          <ItemGroup><PackageReference Include="CanopySim.Files" Version="{Version()}" /></ItemGroup>
        </Project>
        """;

    private static string GlobalPackages() => Environment.GetEnvironmentVariable("NUGET_PACKAGES") is { Length: > 0 } folder
        ? folder
        : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");

    private static string Version() => typeof(Scenario).Assembly.GetName().Version!.ToString(3);

    [GeneratedRegex(@"```csharp\n(?<code>.*?)```", RegexOptions.Singleline)]
    private static partial Regex Example();
}
