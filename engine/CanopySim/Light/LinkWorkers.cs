namespace CanopySim.Light;

/// <summary>
/// The workers that count links, with their arrays. A season keeps them: fresh megabytes for each of its geometries would cost as
/// much as the counting.
/// </summary>
internal sealed class LinkWorkers
{
    private readonly List<Worker> _all = [];
    private readonly List<LinkCounter> _counters = [];
    private LightNodes? _nodes;

    /// <summary>Arrays of the solver, kept for the same reason.</summary>
    public SolverArrays.Pool Arrays { get; } = new();

    /// <summary>Pixels of suns, too.</summary>
    public SunRaster.ScratchPool Suns { get; } = new();

    /// <summary>Counters of the workers at work.</summary>
    public IReadOnlyList<LinkCounter> Counters => _counters;

    /// <summary>Forgets what was counted.</summary>
    public void Begin(LightNodes nodes)
    {
        _nodes = nodes;
        _counters.Clear();
    }

    /// <summary>A worker that nobody else has; called from any thread.</summary>
    public Worker Take()
    {
        lock (_all)
        {
            if (_all.Count == _counters.Count) _all.Add(new Worker(new LinkTracer(), new LinkCounter()));
            var worker = _all[_counters.Count];
            _counters.Add(worker.Links);
            worker.Links.Begin(_nodes!);
            return worker;
        }
    }

    public sealed record Worker(LinkTracer Tracer, LinkCounter Links);
}
