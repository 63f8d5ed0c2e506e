using CanopySim.Results;

namespace CanopySim;

/// <summary>Adds up where a season's time goes, by a clock that the caller lends; without one all times are 0.</summary>
internal sealed class SeasonClock(Func<double>? seconds)
{
    private readonly double _start = seconds?.Invoke() ?? 0;
    private double _light;
    private double _geometry;
    private double _gasExchange;

    public void Light(Action work) => _light += Timed(work);

    public void LightGeometry(Action work)
    {
        var taken = Timed(work);
        (_light, _geometry) = (_light + taken, _geometry + taken);
    }

    public void GasExchange(Action work) => _gasExchange += Timed(work);

    public StageSeconds Times() => new((seconds?.Invoke() ?? 0) - _start, _light, _geometry, _gasExchange);

    private double Timed(Action work)
    {
        var before = seconds?.Invoke() ?? 0;
        work();
        return (seconds?.Invoke() ?? 0) - before;
    }
}
