using CanopySim.Water;

namespace CanopySim.Assessment;

/// <summary>How what was seen goes with what the model shows.</summary>
public enum TipAgreement
{
    /// <summary>There is nothing to compare.</summary>
    None,

    /// <summary>Most tips of both are in one state.</summary>
    Agrees,

    /// <summary>The states lie next to each other.</summary>
    Near,

    /// <summary>One grows freely, the other has stopped.</summary>
    Contradicts,
}

/// <summary>What the noted tips mean, together with what the model knows of water, carbon and season.</summary>
public enum TipMeaning
{
    /// <summary>Nothing was noted of tips.</summary>
    NotNoted,

    /// <summary>They grow freely, before veraison: water and carbon are at hand.</summary>
    WellSupplied,

    /// <summary>They grow freely though the model's soil is so dry that its shoots hold back.</summary>
    SoilWetterThanModel,

    /// <summary>They grow freely though the model's main axes are short of carbon.</summary>
    BetterFedThanModel,

    /// <summary>They grow freely after veraison: leaves are made that compete with the fruit.</summary>
    VigorousLate,

    /// <summary>They slow or stopped, and the model's soil is dry enough for that.</summary>
    ShortOfWater,

    /// <summary>They slow or stopped, and the model's main axes are short of carbon.</summary>
    ShortOfCarbon,

    /// <summary>They slow or stopped as shoots do after bloom.</summary>
    Season,

    /// <summary>They stopped after shoots were topped: a cut tip tells nothing.</summary>
    Topped,

    /// <summary>They slow or stopped before bloom, and the model sees no reason.</summary>
    Unexplained,
}

/// <summary>
/// Sets the sign of the tip beside the model. Tendrils over the tip mean a shoot that grows freely, a tip over its
/// tendrils one that slows (common practice, no source); shoots slow after bloom and often stop near veraison where it is
/// dry, and go on where water is ample (Oxford Companion to Wine 2006); dryness holds back laterals first, then internodes
/// and leaves, then nodes, gas exchange last (Lebon et al. 2006, Ann Bot 98:175-185; Pellegrino et al. 2005), so a tip
/// tells of water before leaves close; under 5 % growing tips are wanted after veraison (Smart &amp; Robinson 1991, from
/// memory). The limits below are assumed.
/// </summary>
/// <param name="Seen">What was noted.</param>
/// <param name="Model">The model's tips that evening.</param>
/// <param name="Tips">How both go together.</param>
/// <param name="Internodes">The same of the upper internodes.</param>
/// <param name="Meaning">What the noted tips mean.</param>
public sealed record TipReading(
    NotedTips Seen, TipSurvey Model, TipAgreement Tips, TipAgreement Internodes, TipMeaning Meaning)
{
    /// <summary>Internodes shorten where the last three have less than this share of the three below them.</summary>
    public const double ShorteningTrend = 0.8;

    // Dryness that takes a tenth of the expansion is seen; main axes with less than half of the carbon that they could
    // use add nodes more slowly in the model.
    private const double SeenExpansion = 0.9;
    private const double FedMainAxes = 0.5;

    /// <summary>Reads what was noted beside the model's tips of the same evening.</summary>
    /// <param name="seen">What was noted.</param>
    /// <param name="model">The model's tips.</param>
    /// <param name="bloom">Day of bloom; null where it was not reached by then.</param>
    /// <param name="veraison">Day of veraison; null where it was not reached by then.</param>
    /// <param name="topped">The last day on which shoots were topped; null for never.</param>
    public static TipReading Of(NotedTips seen, TipSurvey model, DateOnly? bloom, DateOnly? veraison, DateOnly? topped)
    {
        var tips = seen.State is { } state ? Compare(state, StateOf(model)) : TipAgreement.None;
        var internodes = (seen.Upper, UpperOf(model)) switch
        {
            ({ } noted, { } shown) => noted == shown ? TipAgreement.Agrees : TipAgreement.Contradicts,
            _ => TipAgreement.None,
        };
        return new TipReading(seen, model, tips, internodes, MeaningOf(seen, model, bloom, veraison, topped));
    }

    /// <summary>The state of most of the model's tips.</summary>
    public static TipState StateOf(TipSurvey model) => Most(model.GrowingFreely, model.Slowing, model.Stopped);

    /// <summary>What the model's upper internodes do; null where its shoots are too short to tell.</summary>
    public static UpperInternodes? UpperOf(TipSurvey model) => model.InternodeTrend is not { } trend ? null
        : trend < ShorteningTrend ? UpperInternodes.Shortening : UpperInternodes.Even;

    /// <summary>True where the model's soil is so dry that its shoots visibly hold back.</summary>
    public static bool IsDry(TipSurvey model) => WaterStress.Expansion(model.SoilWaterFraction) < SeenExpansion;

    /// <summary>True where the model's main axes get too little carbon for all their nodes.</summary>
    public static bool IsStarved(TipSurvey model) => model.MainSupplyIndex < FedMainAxes;

    internal static TipState Most(double free, double slowing, double stopped) =>
        free > slowing && free > stopped ? TipState.GrowingFreely
        : stopped > slowing && stopped > free ? TipState.Stopped
        : TipState.Slowing;

    private static TipAgreement Compare(TipState seen, TipState shown) => Math.Abs(seen - shown) switch
    {
        0 => TipAgreement.Agrees,
        1 => TipAgreement.Near,
        _ => TipAgreement.Contradicts,
    };

    private static TipMeaning MeaningOf(
        NotedTips seen, TipSurvey model, DateOnly? bloom, DateOnly? veraison, DateOnly? topped)
    {
        var ripens = veraison <= seen.Date;
        return seen.State switch
        {
            null => TipMeaning.NotNoted,
            TipState.GrowingFreely when ripens => TipMeaning.VigorousLate,
            TipState.GrowingFreely when IsDry(model) => TipMeaning.SoilWetterThanModel,
            TipState.GrowingFreely => IsStarved(model) ? TipMeaning.BetterFedThanModel : TipMeaning.WellSupplied,
            TipState.Stopped when topped <= seen.Date => TipMeaning.Topped,
            _ when IsDry(model) => TipMeaning.ShortOfWater,
            _ when IsStarved(model) => TipMeaning.ShortOfCarbon,
            _ when bloom <= seen.Date => TipMeaning.Season,
            _ => TipMeaning.Unexplained,
        };
    }
}
