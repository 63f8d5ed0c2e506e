using CanopySim.Plants;

namespace CanopySim.Runner.Tests.Validation.Studies;

/// <summary>Laterals that push where a shoot was topped.</summary>
internal sealed class LateralsAtTheCut : Study
{
    private const string Source = "general, from memory; Vasconcelos & Castagnoli 2001, Practical Winery, for the "
        + "nodes next to the cut";

    private static readonly Limit Nodes = new WithinRange(1, 3);
    private static readonly Limit Leaves = new WithinRange(3, 8);

    private const int Near = 4;
    private const int TwoWeeks = 14;
    private const int Later = 45;

    private static SeasonCase Season => SeasonCatalogue.ToppedWithLaterals;

    public override string Title => "Topping";

    public override string Done =>
        "The block of `warm-valley` in its first generated weather, shoots topped at 12 nodes ten days after bloom. "
        + "A lateral pushes where it unfolds a leaf within 14 days of the cut; its leaves are counted 45 days after "
        + "it. Means over the shoots that were cut. `growth.released_decline` was chosen while such cuts were looked "
        + "at.";

    public override IReadOnlyList<SeasonCase> Seasons => [Season];

    public override StudyResult Judge(ValidationSeasons seasons)
    {
        var prepared = seasons.Prepared(Season);
        var cut = ValidationWeather.Bloom(prepared.Scenario, prepared.Weather)
            .AddDays(SeasonCatalogue.DaysFromBloomToTopping);
        var before = Shoots(seasons.CanopyOn(Season, cut));
        var after = Shoots(seasons.CanopyOn(Season, cut.AddDays(TwoWeeks)));
        var end = Shoots(seasons.CanopyOn(Season, cut.AddDays(Later)));
        var topped = before.Values.Where(shoot => shoot.Phytomers.Any(phytomer => phytomer.Released)).ToList();
        var (pushed, under, leaves, below) = (0, new int[Near], new List<int>(), new List<int>());
        foreach (var shoot in topped)
        {
            var top = shoot.Phytomers.Count - 1;
            for (var i = 0; i <= top; i++)
            {
                var grown = UnfoldedOf(end[shoot.Id], i);
                var pushes = UnfoldedOf(after[shoot.Id], i) > UnfoldedOf(shoot, i);
                if (top - i >= Near) below.Add(grown);
                if (!pushes || top - i >= Near) continue;
                pushed++;
                under[top - i]++;
                leaves.Add(grown);
            }
        }

        string Mean(Dictionary<ShootId, Shoot> canopy, int place, Func<Shoot, int, int> count) => topped.Count == 0
            ? "none"
            : NumberSay.Number(topped.Average(shoot => count(canopy[shoot.Id], shoot.Phytomers.Count - 1 - place)));
        double? Share(int place) => topped.Count > 0 ? under[place] / (double)topped.Count : null;
        return new StudyResult(
            Finding.Judged(
                "laterals that push under the cut within 14 days, a shoot [1]", Standing.Watched, Nodes, Source,
                topped.Count > 0 ? pushed / (double)topped.Count : null) with
            {
                Note = $"of {topped.Count} shoots; of the four nodes under the cut",
            },
            Finding.Judged(
                "their leaves 45 days after the cut, each [1]", Standing.Watched, Leaves, Source,
                leaves.Count > 0 ? leaves.Average() : null) with
            {
                Note = below.Count > 0
                    ? $"laterals of the nodes further down have {NumberSay.Number(below.Average())} then" : "",
            },
            Finding.Told(
                "share of shoots on which the first / second / third / fourth node under the cut pushes [1]",
                "the nodes next to the cut",
                Source, Share(0), Share(1), Share(2), Share(3)))
        {
            Tables =
            [
                new ToldTable(
                    "The lateral by place under the cut, mean over shoots",
                    ["place", "leaves on the day of the cut", "leaves 14 days later",
                        "nodes 14 days later, folded ones too", "leaves 45 days later"],
                    [.. Enumerable.Range(0, Near + 1).Select(place => (IReadOnlyList<string>)
                    [
                        $"{place + 1}", Mean(before, place, UnfoldedOf), Mean(after, place, UnfoldedOf),
                        Mean(after, place, NodesOf), Mean(end, place, UnfoldedOf),
                    ])]),
            ],
        };
    }

    private static Dictionary<ShootId, Shoot> Shoots(Canopy canopy) =>
        canopy.PrimaryShoots().ToDictionary(shoot => shoot.Id);

    private static int NodesOf(Shoot shoot, int node) => shoot.Phytomers[node].Lateral?.Phytomers.Count ?? 0;

    private static int UnfoldedOf(Shoot shoot, int node) => shoot.Phytomers[node].Lateral?.UnfoldedNodes ?? 0;
}
