using Xunit;

namespace CanopySim.Runner.Tests.Batch;

/// <summary>The short plan, grown once without trouble on one core: what every troubled run must come to.</summary>
public sealed class BatchReference : IDisposable
{
    private readonly BatchFiles _files = new();

    public BatchReference()
    {
        var run = _files.Batch("run", "--threads", "1", "--out", "one");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        Data = _files.DataOf("one");
        Assert.Equal(2 * BatchFiles.Shards, Data.Count);
    }

    /// <summary>Hash of each shard's data.</summary>
    public IReadOnlyDictionary<string, string> Data { get; }

    /// <summary>The run's results folder.</summary>
    public string Results => _files.At("one");

    public void Dispose() => _files.Dispose();
}

/// <summary>Tests that share the reference; one after another, as they watch processes.</summary>
[CollectionDefinition(nameof(BatchCollection))]
public sealed class BatchCollection : ICollectionFixture<BatchReference>;
