using CanopySim.Files.Charts;
using CanopySim.Files.Recording;
using CanopySim.Geometry;

namespace CanopySim.Viewer.State;

/// <summary>
/// Finds a leaf in the days of a recording. The first question reads every canopy once; numbers and areas of the blades
/// are kept.
/// </summary>
public sealed class LeafFinder(SeasonRecording recording)
{
    private readonly Dictionary<int, Dictionary<int, int>> _canopies = [];

    /// <summary>Place of a leaf among a day's blades; −1 where it does not hang.</summary>
    public int IndexOf(int day, int leafId) =>
        day < recording.DayCount && recording.Leaves(day).Count > 0
            && NumbersOf(day).TryGetValue(leafId, out var index) ? index : -1;

    /// <summary>Areas of a day's blades [m²].</summary>
    public float[] AreasOf(int day) => recording.Leaves(day).Area;

    /// <summary>The days on which the leaf hung unfolded.</summary>
    public IReadOnlyList<LeafCourseDay> Course(int leafId)
    {
        List<LeafCourseDay> course = [];
        for (var day = 0; day < recording.DayCount; day++)
        {
            var index = IndexOf(day, leafId);
            if (index < 0) continue;
            var leaves = recording.Leaves(day);
            if (leaves.AgeDays[index] < 0) continue;
            course.Add(new LeafCourseDay(
                recording.Row(day).Date, 1e4 * leaves.Area[index], leaves.Efficiency[index],
                leaves.NetAssimilationGrams[index]));
        }

        return course;
    }

    /// <summary>
    /// The next leaf up the shoot (step 1) or down (−1), laterals after the leaf in whose axil they stand as the canopy
    /// has them; from no leaf,
    /// the largest of the day. Null where none hangs.
    /// </summary>
    public int? Next(int day, int? from, int step)
    {
        IReadOnlyList<DrawnBlade> blades = recording.Leaves(day).Count == 0 ? [] : recording.Canopy(day).Blades;
        if (blades.Count == 0) return null;
        var at = from is { } leaf ? IndexOf(day, leaf) : -1;
        if (at < 0) return blades.MaxBy(blade => blade.Area).LeafId;
        var order = Enumerable.Range(0, blades.Count)
            .OrderBy(i => blades[i].Shoot).ThenBy(i => blades[i].Rank).ThenBy(i => blades[i].LeafId).ToList();
        var place = order.IndexOf(at) + step;
        return blades[order[(place + order.Count) % order.Count]].LeafId;
    }

    private Dictionary<int, int> NumbersOf(int day)
    {
        var number = recording.CanopyNumber(day);
        if (_canopies.TryGetValue(number, out var known)) return known;
        var blades = recording.Canopy(day).Blades;
        var numbers = new Dictionary<int, int>(blades.Count);
        for (var i = 0; i < blades.Count; i++) numbers[blades[i].LeafId] = i;
        return _canopies[number] = numbers;
    }
}
