using CanopySim.Assessment;
using CanopySim.Files.Charts;
using CanopySim.Water;

namespace CanopySim.Files.Forecast;

/// <summary>The growing tip in plain words: what was seen, what the model shows, what both mean.</summary>
public static class TipWords
{
    /// <summary>Where the reading of the sign comes from.</summary>
    public const string Basis =
        "How tendrils and tips are read is common practice, no source. That dryness holds back laterals first, then "
        + "internodes and leaves, then nodes, and gas exchange last, is published (Lebon et al. 2006; Pellegrino et al. "
        + "2005), the amounts are from memory. The tip is set beside the vine; it does not move it.";

    /// <summary>How to look, for who noted no tip.</summary>
    public const string HowToLook =
        "No tip was noted. On ten shoots, see whether the youngest tendrils reach over the tip (tip: tendrils above tip), "
        + "the tip stands over them (tip above tendrils) or has stopped, and whether internodes below the five youngest "
        + "leaves get shorter (upper_internodes: shortening, or even).";

    /// <summary>The days that were noted, one paragraph a day; how to look where none was.</summary>
    public static IReadOnlyList<string> Paragraphs(IReadOnlyList<TipReading> readings, TipSurvey? today, Units units) =>
        readings.Count > 0
            ? [.. readings.Select(reading => Of(reading, units))]
            : today is null ? [HowToLook] : [HowToLook, $"The model on {Day(today.Date)}: {Model(today)}."];

    /// <summary>A day in words.</summary>
    public static string Of(TipReading reading, Units units) => string.Join(
        ' ', ((string[])
        [
            $"{Day(reading.Seen.Date)}: {Seen(reading.Seen)}.", $"The model that evening: {Model(reading.Model)}.",
            Together(reading), Internodes(reading, units), Meaning(reading),
        ]).Where(sentence => sentence.Length > 0));

    /// <summary>Rows of noted beside simulated.</summary>
    public static IEnumerable<IReadOnlyList<string>> Rows(TipReading reading, Units units)
    {
        var (seen, model) = (reading.Seen, reading.Model);
        yield return ["Tips that grow freely, tendrils over them", OfTips(seen.GrowingFreely, seen.Tips), Percent(model.GrowingFreely)];
        yield return ["Tips that slow, over their tendrils", OfTips(seen.Slowing, seen.Tips), Percent(model.Slowing)];
        yield return ["Tips that stopped", OfTips(seen.Stopped, seen.Tips), Percent(model.Stopped)];
        yield return ["Upper internodes, done elongating", Upper(seen), ModelUpper(model)];
        yield return ["Their lengths, from the tip down", "–", Lengths(model, units)];
        yield return ["Water left in the soil", "–", Percent(model.SoilWaterFraction)];
        yield return ["Taken by dryness", "–", WaterStress.Laterals(model.SoilWaterFraction) < 1 ? Dryness(model.SoilWaterFraction) : "nothing"];
        yield return ["Carbon of the tips", "–", TipReading.IsStarved(model) ? "short of what all nodes need" : "enough for all nodes"];
    }

    private static string Seen(NotedTips seen)
    {
        List<string> parts = [];
        if (seen.Tips == 1)
        {
            parts.Add(seen.State switch
            {
                TipState.GrowingFreely => "tendrils stood above the tip",
                TipState.Slowing => "the tip stood above its tendrils",
                _ => "the tip had stopped",
            });
        }
        else if (seen.Tips > 1)
        {
            parts.Add(Listed(
                (seen.GrowingFreely, $"tendrils stood above {seen.GrowingFreely} of {seen.Tips} tips"),
                (seen.Slowing, $"{seen.Slowing} of {seen.Tips} tips stood above their tendrils"),
                (seen.Stopped, $"{seen.Stopped} of {seen.Tips} had stopped")));
        }

        if (seen.Internodes > 0)
            parts.Add(seen.Internodes == 1
                ? $"upper internodes were {(seen.Upper == UpperInternodes.Even ? "even" : "shortening")}"
                : $"upper internodes were shortening on {seen.Shortening} of {seen.Internodes} shoots");
        return string.Join("; ", parts);
    }

    private static string Listed(params (double Count, string Words)[] parts) =>
        string.Join(", ", parts.Where(part => part.Count > 0).Select(part => part.Words));

    private static string Model(TipSurvey model) =>
        Listed(
            (model.GrowingFreely, $"{Percent(model.GrowingFreely)} of the tips grow freely"),
            (model.Slowing, $"{Percent(model.Slowing)} slow down"), (model.Stopped, $"{Percent(model.Stopped)} have stopped"))
        + $"; {Percent(model.SoilWaterFraction)} of the soil's water is left, "
        + (TipReading.IsDry(model) ? $"and dryness takes {Dryness(model.SoilWaterFraction)}" : "enough for growth")
        + (TipReading.IsStarved(model) ? "; the tips get less carbon than they could use" : "");

    private static string Together(TipReading reading) => reading.Tips switch
    {
        TipAgreement.Agrees => "Both agree.",
        TipAgreement.Near => $"They differ by a step: noted {State(reading.Seen.State!.Value)}, in the model most "
            + $"{State(TipReading.StateOf(reading.Model))}.",
        TipAgreement.Contradicts => $"They contradict each other: noted {State(reading.Seen.State!.Value)}, in the model "
            + $"most {State(TipReading.StateOf(reading.Model))}.",
        _ => "",
    };

    private static string Internodes(TipReading reading, Units units) => reading.Internodes switch
    {
        TipAgreement.Agrees => $"Its upper internodes are {ModelUpper(reading.Model)}, too.",
        TipAgreement.Contradicts =>
            $"Its upper internodes, though, are {ModelUpper(reading.Model)} (from the tip down {Lengths(reading.Model, units)}).",
        _ => "",
    };

    private static string Meaning(TipReading reading) => reading.Meaning switch
    {
        TipMeaning.WellSupplied => "Read together: water and carbon are at hand, and the shoots are vigorous.",
        TipMeaning.SoilWetterThanModel =>
            "Read together: the vines show no want of water where the model's do. Its soil may hold too little "
            + "(soil.transpirable_water), or rain or irrigation is missing from its input.",
        TipMeaning.BetterFedThanModel =>
            "Read together: water is at hand, and the vines are better fed than the model's, which has spent its reserves and "
            + "waits for its young leaves: theirs may have been larger.",
        TipMeaning.VigorousLate =>
            "After veraison that is late vigor: new leaves compete with the fruit. Print wants fewer than 5 % growing tips "
            + "then (Smart & Robinson 1991, from memory).",
        TipMeaning.ShortOfWater => "Read together: dryness slows the shoots. Dig before you water: the model's soil is an estimate.",
        TipMeaning.ShortOfCarbon =>
            "Read together: the shoots get less carbon than they could use, as between spent reserves and young leaves, "
            + "or with a heavy crop.",
        TipMeaning.Season => "Read together: shoots slow like this after bloom; by itself it is no want of water.",
        TipMeaning.Topped => "Shoots were topped before: a cut tip tells nothing of water or vigor.",
        TipMeaning.Unexplained =>
            "The model knows no reason for that before bloom: look for cold, pests, disease, want of a nutrient, or a soil "
            + "that is drier than the model's.",
        _ => reading.Seen.Upper == UpperInternodes.Shortening
            ? "Shortening internodes tell that growth slowed a week or two ago." : "",
    };

    private static string State(TipState state) => state switch
    {
        TipState.GrowingFreely => "growing freely",
        TipState.Slowing => "slowing",
        _ => "stopped",
    };

    private static string Upper(NotedTips seen) => seen.Internodes switch
    {
        0 => "–",
        1 => seen.Upper == UpperInternodes.Even ? "even" : "shortening",
        _ => $"shortening on {seen.Shortening} of {seen.Internodes}",
    };

    private static string ModelUpper(TipSurvey model) => TipReading.UpperOf(model) switch
    {
        UpperInternodes.Even => "even",
        UpperInternodes.Shortening => "shortening",
        _ => "too few to tell",
    };

    private static string Lengths(TipSurvey model, Units units) => model.LastInternodes.Count == 0
        ? "–"
        : $"{string.Join(", ", model.LastInternodes.Select(length => Measure.Number(Measure.Length.In(units, 100 * length), 1)))} "
            + Measure.Length.Unit(units);

    private static string Dryness(double soil) =>
        $"{Percent(1 - WaterStress.Laterals(soil))} of laterals' pace, {Percent(1 - WaterStress.Expansion(soil))} of internodes "
        + $"and leaves, {Percent(1 - WaterStress.Nodes(soil))} of nodes, {Percent(1 - WaterStress.Stomata(soil))} of stomata";

    private static string OfTips(int count, int all) => all == 0 ? "–" : $"{count} of {all}";

    private static string Percent(double share) => $"{Measure.Number(100 * share, 0)} %";

    private static string Day(DateOnly date) => ChartAxis.DayText(date, isShort: false);
}
