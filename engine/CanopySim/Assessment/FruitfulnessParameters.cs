using CanopySim.Parameters;

namespace CanopySim.Assessment;

/// <summary>
/// What this season's buds need to bear clusters next year. Cultivars differ, and published trials of warmth disagree:
/// set it to yours.
/// </summary>
public sealed record FruitfulnessParameters
{
    [Parameter("umol m-2 s-1", 50, 2000,
        "PAR on a shoot's leaves about noon from which its buds are as fruitful as they get.", Mark = Mark.Derived,
        Source =
            "derived: a third of full sun, Sanchez & Dokoozlian 2005, AJEV 56:319-329 (Thompson Seedless, "
            + "Cabernet-Sauvignon; Chardonnay, Flame Seedless still rising)")]
    public double FullLight { get; init; } = 650;

    [Parameter("degC", 0, 25, "Temperature at or below which no clusters are laid down.", Mark = Mark.Published,
        Source = "all cultivars barren at 15: Buttrose 1970, Vitis 9:121-125")]
    public double BarrenTemperature { get; init; } = 15;

    [Parameter("degC", 15, 40, "Temperature from which warmth is no longer short.", Mark = Mark.Derived,
        Source =
            "derived: middle of 25 (best in chambers: Sanchez & Dokoozlian 2005) and 30 (30 to 35: Buttrose 1969, Bot "
            + "Gaz 130:166-173)")]
    public double FullTemperature { get; init; } = 27.5;

    [Parameter("1", 1, 30, "Nodes at the base of a shoot that are kept, or may be, at pruning.", Mark = Mark.Assumed)]
    public int RenewalNodes { get; init; } = 10;

    [Parameter("1", 2, 30, "Nodes that unfold above a bud until nothing changes its clusters any more.",
        Mark = Mark.Published,
        Source = "about 10 below the apex, sensitivity falling in a straight line: Buttrose 1969, Bot Gaz 130(3)")]
    public int SensitiveNodes { get; init; } = 10;
}
