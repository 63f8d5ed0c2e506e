namespace CanopySim.Phenology;

/// <summary>Cultivars whose values stand in <see cref="CultivarTable"/>, in the order of the alphabet.</summary>
public enum KnownCultivar
{
    CabernetFranc,
    CabernetSauvignon,
    Chardonnay,
    Chasselas,
    Chenin,
    Gewurztraminer,
    Grenache,
    Malbec,
    Merlot,
    PinotGris,
    PinotNoir,
    Riesling,
    Sangiovese,
    SauvignonBlanc,
    Syrah,
    Tempranillo,
    UgniBlanc,
    Zinfandel,
}
