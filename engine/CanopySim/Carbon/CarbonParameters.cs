using CanopySim.Parameters;

namespace CanopySim.Carbon;

/// <summary>The vine's carbon: perennial mass, reserves, respiration, growth costs and the strength of its sinks.</summary>
public sealed record CarbonParameters
{
    [Parameter("kg", 0.2, 60, "Dry mass of trunk, cordon and roots; left out: half by ground area, half by cordon length.", Mark = Mark.Assumed)]
    public double? PerennialMass { get; init; }

    [Parameter("1", 0.02, 0.3, "Reserves at budbreak, as a share of the perennial mass.", Mark = Mark.Fitted,
        Source = "shoots 130 cm long: Kliewer & Dokoozlian 2005, table 3, over five weather seeds")]
    public double InitialReserves { get; init; } = 0.126;

    [Parameter("1", 0, 0.15, "Reserves that cannot be used, as a share of the perennial mass.", Mark = Mark.Recalled, Source = "starch at bloom 4 to 10 % of dry mass")]
    public double UnusableReserves { get; init; } = 0.05;

    [Parameter("1", 0.05, 0.4, "Most reserves that the perennial mass can hold, as a share of it.", Mark = Mark.Derived,
        Source = "reserves at budbreak and a winter's maintenance, so that the year closes; starch in autumn 8 to 30 % of dry mass, from memory")]
    public double ReserveCeiling { get; init; } = 0.183;

    [Parameter("1/d", 0, 0.5, "Share of the usable reserves that can be mobilised a day before bloom.", Mark = Mark.Assumed, Source = "from an earlier study of ours")]
    public double SpringMobilization { get; init; } = 0.10;

    [Parameter("1/d", 0, 0.2, "Share of the usable reserves that a short-fed ripening crop can draw a day.", Mark = Mark.Assumed)]
    public double RipeningMobilization { get; init; } = 0.03;

    [Parameter("g g-1 d-1", 0, 0.05, "Maintenance of stems at 25 degC, CH2O per dry mass.", Mark = Mark.Derived, Source = "0.015 for crops, wood 5 to 10 times lower: Penning de Vries & van Laar 1982, from memory")]
    public double StemMaintenance { get; init; } = 0.003;

    [Parameter("g g-1 d-1", 0, 0.05, "Maintenance of green fruit at 25 degC.", Mark = Mark.Assumed)]
    public double FruitMaintenance { get; init; } = 0.006;

    [Parameter("g g-1 d-1", 0, 0.02, "Maintenance of the sugar in fruit at 25 degC.", Mark = Mark.Assumed)]
    public double SugarMaintenance { get; init; } = 0.0015;

    [Parameter("g g-1 d-1", 0, 0.02, "Maintenance of trunk, cordon and roots at 25 degC.", Mark = Mark.Derived, Source = "0.010 to 0.015 for roots of crops, wood 5 to 10 times lower: Penning de Vries & van Laar 1982, from memory")]
    public double PerennialMaintenance { get; init; } = 0.0012;

    [Parameter("1", 1, 4, "Factor of maintenance for ten degrees.", Mark = Mark.Recalled, Source = "leaves 1.9 to 2.3, berries 2 to 2.5, general")]
    public double Q10 { get; init; } = 2.0;

    [Parameter("g g-1", 1, 2.5, "CH2O for a gram of leaf.", Mark = Mark.Recalled, Source = "Goudriaan & van Laar 1994")]
    public double LeafCost { get; init; } = 1.46;

    [Parameter("g g-1", 1, 2.5, "CH2O for a gram of stem or wood.", Mark = Mark.Recalled, Source = "Goudriaan & van Laar 1994")]
    public double StemCost { get; init; } = 1.51;

    [Parameter("g g-1", 1, 2.5, "CH2O for a gram of root.", Mark = Mark.Recalled, Source = "Goudriaan & van Laar 1994")]
    public double RootCost { get; init; } = 1.44;

    [Parameter("g g-1", 1, 2.5, "CH2O for a gram of green berry and rachis.", Mark = Mark.Recalled, Source = "Vivin et al. 2003")]
    public double FruitCost { get; init; } = 1.35;

    [Parameter("g g-1", 1, 1.5, "CH2O for a gram of sugar in the berry.", Mark = Mark.Recalled, Source = "1.10 to 1.20, mainly hexose loading")]
    public double SugarCost { get; init; } = 1.10;

    [Parameter("g m-2", 30, 150, "Dry mass of a blade.", Mark = Mark.Recalled, Source = "65 to 90, general")]
    public double LeafMassPerArea { get; init; } = 75;

    [Parameter("g/cm", 0.01, 0.3, "Dry mass of a shoot's axis while it elongates.", Mark = Mark.Assumed, Source = "from an earlier study of ours")]
    public double ElongatingStemMass { get; init; } = 0.055;

    [Parameter("g/cm", 0.05, 1, "Dry mass of the ripe axis of a shoot 130 cm long.", Mark = Mark.Fitted,
        Source = "prunings of 1.58 kg a vine: Kliewer & Dokoozlian 2005, table 3, over five weather seeds")]
    public double RipeStemMass { get; init; } = 0.21;

    [Parameter("1", 0.3, 1.2, "Ripe mass of a stem that is led down, against one as long that is led up.", Mark = Mark.Derived,
        Source = "canes 0.86 as heavy for their length where half of them hang, so 0.72 where all do: Kliewer & Dokoozlian 2005, table 3, up-and-down against vertical")]
    public double LedDownStemMass { get; init; } = 0.72;

    [Parameter("1", 0.05, 10, "Pull of main axes on carbon.", Mark = Mark.Assumed)]
    public double MainAxisWeight { get; init; } = 3;

    [Parameter("1", 0.05, 10, "Pull of laterals.", Mark = Mark.Assumed)]
    public double LateralWeight { get; init; } = 1;

    [Parameter("1", 0.05, 10, "Pull of fruit before veraison.", Mark = Mark.Assumed)]
    public double FruitWeight { get; init; } = 2;

    [Parameter("1", 0.05, 10, "Pull of fruit after veraison.", Mark = Mark.Assumed)]
    public double RipeningFruitWeight { get; init; } = 2.5;

    [Parameter("1", 0.05, 10, "Pull of thickening stems.", Mark = Mark.Assumed)]
    public double ThickeningWeight { get; init; } = 0.6;

    [Parameter("1", 0.05, 10, "Pull of roots.", Mark = Mark.Assumed)]
    public double RootWeight { get; init; } = 0.5;

    [Parameter("1", 0.05, 10, "Pull of reserves.", Mark = Mark.Assumed)]
    public double ReserveWeight { get; init; } = 0.25;
}
