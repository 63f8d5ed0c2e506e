using CanopySim.Parameters;

namespace CanopySim.Assessment;

/// <summary>
/// When sun and heat damage fruit. A working guide: cultivars, stages and fruit used to shade or sun differ.
/// </summary>
public sealed record FruitHeatParameters
{
    [Parameter("1", 0, 1,
        "How tightly berries sit: 0 each berry alone in the wind, 1 a closed cluster whose berries lose heat only "
        + "outward.",
        Mark = Mark.Assumed)]
    public double Compactness { get; init; } = 0.5;

    [Parameter("degC", 30, 60, "Surface temperature from which fruit in the light browns.", Mark = Mark.Recalled,
        Source =
            "about 45 with light, minutes to hours; weakly supported. 40 to 43 did damage near harvest: Univ. "
            + "Basilicata and UC Davis, conference record 13127")]
    public double BrowningTemperature { get; init; } = 45;

    [Parameter("degC", 30, 60, "Surface temperature from which skin dies.", Mark = Mark.Recalled,
        Source = "about 48 to 52, various, weakly supported")]
    public double NecrosisTemperature { get; init; } = 48;
}
