namespace CanopySim.Protection;

/// <summary>Days between sprays that print names at a state of the index; the label stands above them.</summary>
/// <param name="SulfurFrom">Fewest days with sulfur.</param>
/// <param name="SulfurTo">Most days with sulfur.</param>
/// <param name="Others">Days with synthetic fungicides.</param>
/// <param name="OfLabel">Which of the label's intervals is named beside them.</param>
public readonly record struct MildewInterval(int SulfurFrom, int SulfurTo, int Others, string OfLabel)
{
    /// <summary>
    /// The sugar of wine and raisin grapes from which print ends sprays against powdery mildew [Brix]: UC IPM 2014.
    /// </summary>
    public const double LastSugarBrix = 12;

    /// <summary>
    /// The interval of a class of the index: a trade help page that cites the University of California and the American
    /// Phytopathological Society; seen, secondary.
    /// </summary>
    public static MildewInterval Of(MildewPressure pressure) => pressure switch
    {
        MildewPressure.Low => new MildewInterval(14, 21, 21, "the label's longest"),
        MildewPressure.Moderate => new MildewInterval(10, 17, 21, "the label's longest"),
        _ => new MildewInterval(7, 7, 14, "the label's shortest"),
    };
}
