using System.Text.Json;
using Xunit;

namespace CanopySim.Runner.Tests.Batch;

/// <summary>A batch from its plan to its table.</summary>
[Collection(nameof(BatchCollection))]
public sealed class BatchRunTests(BatchReference reference)
{
    private const string WithFailures = """
        name: failing
        scenarios: [scenario.yaml]
        vary:
          trellis.cordon_height: {distribution: uniform, from: 0.5 m, to: 3 m}
        design: {kind: sobol_sequence, points: 8}
        until: 03-05
        shard: {items: 3}

        """;

    [Fact]
    public void TwoCoresGiveTheBytesOfOne()
    {
        using var files = new BatchFiles();
        var run = files.Batch("run", "--threads", "2");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        Assert.Equal(reference.Data, files.DataOf("results/short"));
        Assert.Contains("60 of 60 seasons", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', run.Error);

        Assert.Equal(RunnerApp.Ok, files.Batch("merge").ExitCode);
        Assert.Equal(RunnerApp.Ok, files.Batch("status").ExitCode);
        var table = Ask(files, "SELECT * FROM seasons ORDER BY item");
        Assert.Equal("item,scenario,weather,year,seed,rows.spacing,growth.vigor_spread,filled_gaps", string.Join(',', table[0].Split(',')[..8]));
        Assert.Equal(BatchFiles.Items + 1, table.Length);
        Assert.StartsWith("1,First season,weather.csv,2025,3,2,0.", table[1]);
        Assert.StartsWith("60,First season,weather.csv,2025,4,2.8,0.", table[^1]);
        Assert.Equal(
            ["spacing,seasons,budbreak,leaves", "2,20,103,false", "2.4,20,103,false", "2.8,20,103,false"],
            Ask(files, """
                SELECT "rows.spacing" AS spacing, count(*) AS seasons, min("dates.budbreak_day_of_year") AS budbreak,
                    bool_or("harvest.sugar_brix" IS NOT NULL) AS leaves FROM seasons GROUP BY 1 ORDER BY 1
                """));
        // Every fifth day of the spring, of each season.
        Assert.Equal(["60,105,60"], Ask(files, "SELECT min(day_of_year), max(day_of_year), count(DISTINCT item) FROM courses")[1..]);
        using var provenance = JsonDocument.Parse(files.Read("results/short/merged/provenance.json"));
        Assert.Equal((60, 0, 0), (Whole("rows"), Whole("failed"), Whole("missing_shards")));
        Assert.Equal(2, provenance.RootElement.GetProperty("inputs").GetArrayLength());

        int Whole(string name) => provenance.RootElement.GetProperty(name).GetInt32();
    }

    [Fact]
    public void WhatFailsIsNamedAndTheRestGoesOn()
    {
        using var files = new BatchFiles(WithFailures);
        var run = files.Batch("run");
        Assert.True(run.ExitCode == RunnerApp.SomeFailed, run.ToString());
        var status = files.Batch("status");
        Assert.Equal(RunnerApp.SomeFailed, status.ExitCode);
        var failed = status.Output.Split('\n').Where(line => line.Contains(" failed: ", StringComparison.Ordinal)).ToList();
        Assert.InRange(failed.Count, 1, 7);
        Assert.All(failed, line => Assert.Contains("trellis.", line, StringComparison.Ordinal));

        // An item that failed is not tried again unless one asks.
        Assert.Contains("0 grown now, 8 kept from before", files.Batch("run").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("0 grown now", files.Batch("run", "--retry-failed").Output, StringComparison.Ordinal);

        var merge = files.Batch("merge");
        Assert.Equal(RunnerApp.SomeFailed, merge.ExitCode);
        Assert.Equal($"{8 - failed.Count}", Ask(files, "SELECT count(*) FROM seasons")[1]);
        Assert.Equal(failed.Count + 1, File.ReadAllLines(files.At("results/failing/merged/failures.csv")).Length);
    }

    [Fact]
    public void PartsOfAnArrayAreTheWhole()
    {
        using var files = new BatchFiles();
        for (var task = 0; task < 3; task++)
        {
            if (task == 2)
            {
                var early = files.Batch("merge");
                Assert.Equal(RunnerApp.SomeFailed, early.ExitCode);
                Assert.Contains("shard 11: not grown yet", early.Error, StringComparison.Ordinal);
                var some = files.Batch("merge", "--incomplete");
                Assert.Equal(RunnerApp.SomeFailed, some.ExitCode);
                Assert.Contains("40 seasons in 2 files", some.Output, StringComparison.Ordinal);
            }

            var run = files.Batch("run", "--task", $"{task}", "--tasks", "3");
            Assert.Contains("20 grown now, 0 kept from before", run.Output, StringComparison.Ordinal);
        }

        Assert.Equal(reference.Data, files.DataOf("results/short"));
        var submit = files.Batch("submit", "--dry-run", "--slurm", "--account=grapes");
        Assert.DoesNotContain("--array", submit.Output, StringComparison.Ordinal);
        Assert.Contains("#SBATCH --account=grapes", submit.Output, StringComparison.Ordinal);
    }

    private static string[] Ask(BatchFiles files, string sql)
    {
        var run = files.Batch("ask", sql, "--csv");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        return run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
