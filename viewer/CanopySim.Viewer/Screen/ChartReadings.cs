using CanopySim.Files.Charts;
using CanopySim.Files.Recording;
using CanopySim.Results;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Screen;

/// <summary>The numbers of a chart at a place on its axis, from the rows that it was drawn of.</summary>
public static class ChartReadings
{
    private const string None = "–";

    /// <summary>The values at a place: a date, an age or an hour, by the chart.</summary>
    public static (string Heading, IReadOnlyList<(string What, string Value)> Rows) At(
        SeasonFacts facts, LeafFinder leaves, ViewState state, double? place)
    {
        if (state.Chart == SeasonCharts.FruitCarbonByLeafAge) return OfFeeding(facts, place);
        if (state.Chart == SeasonCharts.DayCourse) return OfHour(facts.Recording, leaves, state, place ?? state.Hour);
        var day = place is { } at ? facts.DayOf(DateOnly.FromDayNumber((int)Math.Round(at))) : state.Day;
        var row = facts.Recording.Row(day);
        return (TimeStrip.SeasonDate(row.Date), state.Chart switch
        {
            SeasonCharts.RipeningCapacity =>
                [("Sugar the leaves could send", row.RipeningCapacityGPerKgD is { } capacity
                ? $"{Measure.SugarPerFruit.Text(state.Units, capacity, 1)} a day" : None)],
            SeasonCharts.Sugar => [("Sugar of the fruit", row.SugarBrix is { } brix ? $"{Measure.Number(brix, 1)} Brix"
                : None)],
            SeasonCharts.LeafAreaByLeafAge => ByAge(
                facts, row.Date, age => age.LeafAreaM2PerVine, value => Measure.LeafArea.Text(state.Units, value, 2)),
            _ => ByAge(
                facts, row.Date, age => age.NetAssimilationGCo2PerVine,
                value => Measure.SmallMass.Text(state.Units, value, state.Units == Units.Us ? 3 : 1)),
        });
    }

    /// <summary>A leaf on a date, in a line.</summary>
    public static string OfLeaf(LeafFinder leaves, SeasonFacts facts, int leaf, DateOnly date, Units units)
    {
        var day = facts.DayOf(date);
        var index = leaves.IndexOf(day, leaf);
        if (index < 0) return $"{ChartAxis.DayText(date, isShort: false)}: the leaf does not hang.";
        var recorded = facts.Recording.Leaves(day);
        return $"{ChartAxis.DayText(date, isShort: false)}: "
            + $"efficiency {Measure.Number(100 * recorded.Efficiency[index], 0)} %, "
            + $"{Measure.LeafAreaOfShoot.Text(units, 1e4 * leaves.AreasOf(day)[index], 0)}, "
            + $"{Measure.Number(1000 * recorded.NetAssimilationGrams[index], 0)} mg of CO₂.";
    }

    // The sum first, then the classes of the colors, young to old.
    private static IReadOnlyList<(string, string)> ByAge(
        SeasonFacts facts, DateOnly date, Func<LeafAgeRow, double> column, Func<double, string> text)
    {
        IReadOnlyList<LeafAgeRow> all = facts.Recording.Outcome()?.LeafAges ?? facts.LeafAges;
        var rows = all.Where(row => row.Date == date).ToList();
        return
        [
            ("All leaves", text(rows.Sum(column))),
            .. ChartStyle.AgeClasses
                .Select(ages => (ages, Of: rows.Where(row => ChartStyle.AgeClassOf(row.AgeFromD) == ages).ToList()))
                .Where(pair => pair.Of.Count > 0)
                .Select(pair => ($"{pair.ages.Label} days", text(pair.Of.Sum(column)))),
        ];
    }

    private static (string, IReadOnlyList<(string, string)>) OfFeeding(SeasonFacts facts, double? place)
    {
        var shares = facts.Recording.Outcome()?.Summary.RipeningCarbonByLeafAge ?? [];
        if (place is not { } age) return ("Point at a column for its number", []);
        return shares.FirstOrDefault(share => age >= share.FromD && age < share.ToD) is { } found
            ? ($"Leaves {found.FromD} to {found.ToD} days old",
                [("Share of the carbon", $"{Measure.Number(100 * found.Share, 1)} %")])
            : ("No leaves of this age then", []);
    }

    private static (string, IReadOnlyList<(string, string)>) OfHour(
        SeasonRecording recording, LeafFinder leaves, ViewState state, double place)
    {
        var hour = (int)Math.Floor(place);
        var course = DayCourseChart.Hours(recording.Hours(state.Day), leaves.AreasOf(state.Day));
        var date = ChartAxis.DayText(recording.Row(state.Day).Date, isShort: false);
        var heading = $"{date}, {TimeStrip.HourWords(hour)}";
        foreach (var of in course)
        {
            if (of.Hour != hour) continue;
            return (heading,
            [
                ("Light over the canopy", $"{Measure.Number(of.IncidentPpfd, 0)} µmol/(m² s)"),
                ("Light a leaf takes up", $"{Measure.Number(of.LightPerLeafArea, 0)} µmol/(m² s)"),
                ("Net assimilation", $"{Measure.Number(of.NetAssimilation, 2)} µmol/(m² s)"),
                ("Air", Measure.Temperature(state.Units, of.AirTemperature, 1)),
            ]);
        }

        return (heading, [("Light", course.Count == 0 ? "no leaves on this day" : "dark")]);
    }
}
