using CanopySim.Parameters;

namespace CanopySim.Fruit;

/// <summary>Clusters, berries and their sugar.</summary>
public sealed record FruitParameters
{
    [Parameter("1", 0, 5, "Clusters on a shoot.", Mark = Mark.Published, Source = "1.5 to 2.2 by clone: AVF 2001")]
    public double ClustersPerShoot { get; init; } = 1.8;

    [Parameter("1", 5, 800, "Berries that a cluster sets at good supply.", Mark = Mark.Fitted,
        Source = "yield 9.9 t/ha: Kliewer & Dokoozlian 2005, table 3, over five weather seeds; published 74 to 144: AVF clone trials 1999")]
    public double BerriesPerCluster { get; init; } = 113;

    [Parameter("g", 0.01, 0.5, "Dry mass of a berry's structure (skin, seeds, pulp).", Mark = Mark.Assumed)]
    public double BerryStructure { get; init; } = 0.08;

    [Parameter("g", 0.2, 8, "Fresh mass of a berry when the loading of sugar ends.", Mark = Mark.Recalled, Source = "1.0 to 1.3 g Cabernet-Sauvignon, general")]
    public double BerryFreshMass { get; init; } = 1.15;

    [Parameter("mg/d", 1, 40, "Most sugar that a berry can load a day.", Mark = Mark.Fitted,
        Source = "0.15 to 0.45 Brix a day after veraison, common practice, no source; 3 to 7 realised, from memory")]
    public double SugarLoading { get; init; } = 8.3;

    [Parameter("Brix", 2, 10, "Sugar of a berry at veraison.", Mark = Mark.Assumed)]
    public double SugarAtVeraison { get; init; } = 5.5;

    [Parameter("Brix", 18, 35, "Sugar at which loading ends.", Mark = Mark.Assumed)]
    public double LoadingEnds { get; init; } = 25.5;

    [Parameter("1", 0, 0.2, "Stalk's share of a cluster's fresh mass.", Mark = Mark.Assumed)]
    public double StalkShare { get; init; } = 0.05;
}
