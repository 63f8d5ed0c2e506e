using CanopySim.Parameters;

namespace CanopySim.Phenology;

/// <summary>
/// When the vine's stages come. Thermal units are those of <see cref="ThermalResponse"/> [°C d], counted from budbreak for
/// bloom and from bloom for veraison, so that nodes and stages answer temperature together.
/// </summary>
public sealed record Cultivar
{
    [KeyHelp("A cultivar of the built-in table, whose stages, leaf, shoot and fruit sizes serve where the scenario gives none.")]
    public KnownCultivar? FromTable { get; init; }

    [KeyHelp("Name of the cultivar, for the report.")]
    public string Name { get; init; } = "mid-season red";

    [Parameter("degC d", 20, 600, "Heat sum to budbreak: hourly temperature above 5 degC, from 1 February (1 August in the south).",
        Mark = Mark.Assumed)]
    public double BudbreakSum { get; init; } = 340;

    [Parameter("degC d", 250, 900, "Thermal units from budbreak to half bloom.", Mark = Mark.Derived,
        Source = "16 to 19 nodes at bloom (Pratt & Coombe 1978) at this model's phyllochrons")]
    public double BloomSum { get; init; } = 455;

    [Parameter("degC d", 400, 1800, "Thermal units from bloom to half veraison, at full carbon supply.", Mark = Mark.Assumed)]
    public double VeraisonSum { get; init; } = 900;

    [Parameter("1", 0.2, 1, "Rate at which veraison nears on a vine without carbon for its fruit, against a well fed one.",
        Mark = Mark.Fitted, Source = "later veraison with 6 than with 12 leaves a shoot: Parker et al. 2014, 2015")]
    public double VeraisonRateWithoutSupply { get; init; } = 0.6;

    [Parameter("degC d", 900, 1700, "Published sum to flowering: daily mean above 0 degC from day 60 (242 in the south); printed for comparison only.",
        Mark = Mark.Recalled, Source = "Parker et al. 2013, Agric Forest Meteorol 180:249-264, Cabernet-Sauvignon")]
    public double PublishedFloweringSum { get; init; } = 1299;

    [Parameter("degC d", 2000, 3200, "Published sum to veraison, counted alike; printed for comparison only.",
        Mark = Mark.Recalled, Source = "Parker et al. 2013, Agric Forest Meteorol 180:249-264, Cabernet-Sauvignon")]
    public double PublishedVeraisonSum { get; init; } = 2689;
}
