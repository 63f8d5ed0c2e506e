using CanopySim.Files.Notes;

namespace CanopySim.Files.Tests.Forecast.Twins;

/// <summary>
/// What a grower would write down of a twin: ten shoots every two weeks up to bloom, a leaf, clusters, the days of bloom and veraison,
/// and sugar after it; each with the error of a tape, an eye or a refractometer. Budbreak is not noted.
/// </summary>
internal static class TwinNotes
{
    private const int Shoots = 10;

    // Standard deviations between shoots, and of the way of measuring: of lengths and areas as a share, of nodes, sugar [Brix] and days [d]
    // as such. What the notes' own errors assume, or less.
    private const double LengthBetween = 0.2;
    private const double LengthShared = 0.05;
    private const double NodesBetween = 1;
    private const double LeafShared = 0.08;
    private const double SugarError = 0.5;
    private const double DayError = 1.5;

    /// <summary>Days on which shoots are measured.</summary>
    private static readonly (int Month, int Day)[] ShootDays = [(4, 11), (4, 25), (5, 9), (5, 19)];

    /// <summary>Notes to a day, understood.</summary>
    public static NotedVines Of(TwinTruth twin, DateOnly asOf)
    {
        var notes = new List<FieldNote>();
        var year = asOf.Year;
        for (var k = 0; k < ShootDays.Length; k++)
        {
            var day = new DateOnly(year, ShootDays[k].Month, ShootDays[k].Day);
            var row = twin.Season.Days.LastOrDefault(row => row.Date <= day);
            if (day > asOf || row is not { NodesPerShoot: > 0 }) continue;
            var tape = 1 + (LengthShared * twin.Normal("tape", k));
            for (var shoot = 0; shoot < Shoots; shoot++)
            {
                var length = row.ShootLengthCm / 100 * tape * (1 + (LengthBetween * twin.Normal("shoot", k, shoot)));
                var nodes = row.NodesPerShoot + twin.Miscount + (NodesBetween * twin.Normal("nodes", k, shoot));
                notes.Add(Note(day, NoteKind.ShootLength, NoteMeasure.Length, Math.Max(0.01, length)));
                notes.Add(Note(day, NoteKind.Nodes, NoteMeasure.Count, Math.Max(0, Math.Round(nodes))));
            }
        }

        var leaves = twin.Season.Leaves.Where(leaf => leaf.Date == twin.LeafDay && leaf.Order == 1).Select(leaf => leaf.AreaCm2).OrderDescending().ToList();
        if (twin.LeafDay <= asOf && leaves.Count > 0)
        {
            var largest = leaves.Take((leaves.Count + 2) / 3).Average() * 1e-4;
            notes.Add(Note(twin.LeafDay, NoteKind.LeafSize, NoteMeasure.LeafArea, largest * (1 + (LeafShared * twin.Normal("leaf")))));
            for (var shoot = 0; shoot < Shoots; shoot++)
            {
                var clusters = Math.Max(0, Math.Round(twin.Scenario.Fruit.ClustersPerShoot + (0.6 * twin.Normal("clusters", shoot))));
                notes.Add(Note(twin.LeafDay, NoteKind.Clusters, NoteMeasure.PerShoot, clusters));
            }
        }

        AddStage(notes, NoteKind.Bloom, twin.Dates.Bloom, twin.Normal("bloom"), asOf);
        AddStage(notes, NoteKind.Veraison, twin.Dates.Veraison, twin.Normal("veraison"), asOf);
        var sample = asOf.AddDays(-1);
        if (twin.Dates.Veraison < sample && twin.Season.Days.LastOrDefault(row => row.Date <= sample)?.SugarBrix is { } brix)
            notes.Add(Note(sample, NoteKind.BerrySugar, NoteMeasure.Sugar, brix + (SugarError * twin.Normal("sample", asOf.DayOfYear))));
        return NoteObservations.Of(new FieldNotes([.. notes.OrderBy(note => note.Date)], []), asOf);
    }

    private static void AddStage(List<FieldNote> notes, NoteKind kind, DateOnly? truth, double chance, DateOnly asOf)
    {
        if (truth is not { } day || day.AddDays((int)Math.Round(DayError * chance)) is var seen && seen > asOf) return;
        notes.Add(Note(day.AddDays((int)Math.Round(DayError * chance)), kind, NoteMeasure.Share, 0.5));
    }

    private static FieldNote Note(DateOnly date, NoteKind kind, NoteMeasure measure, double value) =>
        new() { Place = new InputPlace("twin"), Date = date, Kind = kind, Measure = measure, Value = value };
}
