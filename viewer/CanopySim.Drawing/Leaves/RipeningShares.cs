using CanopySim.Files.Recording;

namespace CanopySim.Drawing.Leaves;

/// <summary>
/// Each leaf's share in the carbon that all leaves gained from veraison to the target sugar, or to the end where that
/// was not reached: the days of <c>ripening_carbon_by_leaf_age</c>.
/// </summary>
public sealed class RipeningShares
{
    private readonly Dictionary<int, double> _grams = [];
    private readonly double _total;

    private RipeningShares(SeasonRecording recording, DateOnly from, DateOnly? to)
    {
        for (var day = 0; day < recording.DayCount; day++)
        {
            var date = recording.Row(day).Date;
            if (date < from || date > to) continue;
            var (blades, leaves) = (recording.Canopy(day).Blades, recording.Leaves(day));
            for (var i = 0; i < leaves.Count; i++)
            {
                if (leaves.AgeDays[i] < 0) continue;
                _grams[blades[i].LeafId] = _grams.GetValueOrDefault(blades[i].LeafId) + leaves.NetAssimilationGrams[i];
                _total += leaves.NetAssimilationGrams[i];
            }
        }
    }

    /// <summary>Null where the season has not ended or fruit did not ripen.</summary>
    public static RipeningShares? Of(SeasonRecording recording) =>
        recording.Outcome()?.Summary.Dates is { Veraison: { } veraison } dates
            ? new RipeningShares(recording, veraison, dates.TargetSugar)
            : null;

    /// <summary>Share of a leaf [0 to 1]; 0 for one that did not hang then.</summary>
    public float Of(int leafId) => _total > 0 ? (float)(_grams.GetValueOrDefault(leafId) / _total) : 0;
}
