using CanopySim.Results;

namespace CanopySim.Fitting;

/// <summary>A member's season, run beyond the day of the forecast to the target sugar or the season's end.</summary>
/// <param name="Member">Its number.</param>
/// <param name="Summary">The season in numbers.</param>
/// <param name="Days">Its days.</param>
/// <param name="YoungLeaf">Leaf younger than <see cref="YoungDays"/> at veraison; null where that is not reached.</param>
/// <param name="Shown">What it shows of each observation.</param>
public sealed record AheadSeason(
    int Member, SeasonSummary Summary, IReadOnlyList<DayRow> Days, YoungLeaf? YoungLeaf, double[] Shown)
{
    /// <summary>Leaves younger than this are in or before their prime for weeks to come [d].</summary>
    public const int YoungDays = 60;

    /// <summary>The row of a day, or the last one before it; null before the first.</summary>
    public DayRow? On(DateOnly date)
    {
        if (Days.Count == 0 || date < Days[0].Date) return null;
        return Days[Math.Min(Days.Count - 1, date.DayNumber - Days[0].Date.DayNumber)];
    }

    internal static AheadSeason Of(int member, SeasonResult season, double[] shown)
    {
        YoungLeaf? young = null;
        if (season.Summary.Dates.Veraison is { } veraison)
        {
            var classes = season.LeafAges.Where(row => row.Date == veraison).ToList();
            var youngOnes = classes.Where(row => row.AgeToD <= YoungDays).ToList();
            var absorbed = classes.Sum(row => row.AbsorbedParMolPerVine);
            young = new YoungLeaf(
                youngOnes.Sum(row => row.LeafAreaM2PerVine), classes.Sum(row => row.LeafAreaM2PerVine),
                absorbed > 0 ? youngOnes.Sum(row => row.AbsorbedParMolPerVine) / absorbed : 0);
        }

        return new AheadSeason(member, season.Summary, season.Days, young, shown);
    }
}

/// <summary>Young leaf at veraison, by which the fruit's leaves of autumn are judged.</summary>
/// <param name="Area">Its area [m² a vine].</param>
/// <param name="WholeArea">Area of all leaves [m² a vine].</param>
/// <param name="ShareOfLight">Its share of the light that leaves absorb [0 to 1].</param>
public readonly record struct YoungLeaf(double Area, double WholeArea, double ShareOfLight)
{
    public double ShareOfArea => WholeArea > 0 ? Area / WholeArea : 0;
}
