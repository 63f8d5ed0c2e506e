using CanopySim.Drawing.Leaves;
using CanopySim.Files.Charts;
using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// The strip along the bottom: what the colors mean and what the vine does today, the day's line, the season's line.
/// </summary>
internal static class TimeStrip
{
    // Days from budbreak to ripe fruit with a month on either side, until the season's end is known.
    private const int ExpectedDays = 230;

    private const float LegendWidth = 300;

    // A name of colors, the colors and their numbers are as high as a heading and these.
    private const int MostFactLines = 2;

    /// <summary>Adds the strip; returns its upper end [px].</summary>
    public static float Add(Sheet sheet, float width, float height)
    {
        var pad = sheet.U(12);
        var button = Math.Max(PushButton.WidthOf("Play season", sheet.Scale, hasSymbol: true), sheet.U(100));
        if (sheet.IsCramped)
        {
            var upper = height - sheet.U(4) - sheet.U(SeasonTrack.Height) - sheet.U(4);
            AddSurface(sheet, width, height, upper);
            AddSeason(sheet, width, upper + sheet.U(4), button);
            return upper;
        }

        var (gap, model) = (sheet.U(8), sheet.Model);
        var legendWidth = Math.Min(sheet.U(LegendWidth), (width - (3 * pad)) * 0.42f);
        var todayWidth = width - legendWidth - (4 * pad);
        var isFitted = sheet.State.Range == RangeMode.Fitted && sheet.State.Quantity != LeafQuantity.Shoot;
        var note = model.IsDark ? QuantityText.InTheDark(sheet.State.Quantity) : "";
        var legendHeight = LegendBar.HeightAt(
            model.Coloring, sheet.State.Units, isFitted, note, legendWidth, sheet.Scale);
        var (heading, facts) = TodayWords(sheet, todayWidth);
        var todayHeight = sheet.LineHeight(TextKind.Heading) + (facts.Count * sheet.LineHeight());
        var rowHeight = Math.Max(legendHeight, todayHeight);
        var (hours, season) = (sheet.U(HourTrack.Height), sheet.U(SeasonTrack.Height));
        var top = height - (gap + rowHeight + gap + hours + sheet.U(4) + season + sheet.U(4));
        AddSurface(sheet, width, height, top);
        var y = top + gap;
        sheet.Add(new LegendBar
        {
            Name = "legend",
            Bounds = new SKRect(pad, y, pad + legendWidth, y + legendHeight),
            Coloring = model.Coloring,
            Units = sheet.State.Units,
            Scale = sheet.Scale,
            IsFitted = isFitted,
            Note = note,
        });
        var x = pad + legendWidth + (2 * pad);
        sheet.Add(new Label
        {
            Name = "today",
            Bounds = new SKRect(x, y, x + todayWidth, y + sheet.LineHeight(TextKind.Heading)),
            Lines = [heading],
            Kind = TextKind.Heading,
        });
        sheet.Add(new Label
        {
            Name = "today.facts",
            Bounds = new SKRect(x, y + sheet.LineHeight(TextKind.Heading), x + todayWidth, y + todayHeight),
            Lines = facts,
        });
        y += rowHeight + gap;

        AddPlay(sheet, "play.day", Playing.Day, "Play day", "D", new SKRect(pad, y, pad + button, y + sheet.U(24)));
        sheet.Add(new HourTrack
        {
            Name = "hour",
            Bounds = new SKRect(pad + button + pad, y, width - pad, y + hours),
            Light = model.LightOfDay,
            Hour = sheet.State.Hour,
            Scale = sheet.Scale,
            Set = model.SetHour,
            Key = "Shift+← →",
            Tip = "Hour of the day, local standard time",
        });
        y += hours + sheet.U(4);
        AddSeason(sheet, width, y, button);
        return top;
    }

    private static void AddSurface(Sheet sheet, float width, float height, float top) => sheet.Add(new Backdrop
    {
        Name = "bottom",
        Bounds = new SKRect(0, top, width, height),
        Seam = new SKRect(0, top, width, top + 1),
    });

    private static void AddSeason(Sheet sheet, float width, float y, float button)
    {
        var (pad, model, season) = (sheet.U(12), sheet.Model, sheet.U(SeasonTrack.Height));
        AddPlay(sheet, "play.season", Playing.Season, "Play season", "Space",
            new SKRect(pad, y + sheet.U(18), pad + button, y + sheet.U(42)));
        var count = model.Facts.DayCount;
        sheet.Add(new SeasonTrack
        {
            Name = "season",
            Bounds = new SKRect(pad + button + pad, y, width - pad, y + season),
            Dates = model.Dates,
            LeafAreas = model.LeafAreas,
            Stages = model.Facts.Stages,
            Span = model.Recording.IsFinished ? count : Math.Max(ExpectedDays, count + 1),
            Day = sheet.State.Day,
            Scale = sheet.Scale,
            Set = model.SetDay,
            Key = "← →",
            Tip = "Day of the season; the shape is the leaf area",
        });
    }

    /// <summary>Date and hour, and what the vine is and does then: as much as fits two lines.</summary>
    private static (string Heading, IReadOnlyList<string> Facts) TodayWords(Sheet sheet, float width)
    {
        var (model, state) = (sheet.Model, sheet.State);
        if (model.Facts.DayCount == 0) return ("No day is there yet", [ProgressWords(model)]);
        var row = model.Recording.Row(state.Day);
        var date = SeasonDate(row.Date);
        var headings = new[] { $"{date}, {HourWords(state.Hour)}",
            $"{ChartAxis.DayText(row.Date, isShort: true)}, {HourWords(state.Hour)}",
            ChartAxis.DayText(row.Date, isShort: true) };
        var heading = headings.FirstOrDefault(text =>
            ScreenText.Width(text, TextKind.Heading, sheet.Scale) <= width) ?? headings[^1];
        List<string> parts = [];
        if (state.ShowsTrial) parts.Add("the season as tried");
        if (!model.Recording.IsFinished) parts.Add(ProgressWords(model));
        if (row.LeafAreaM2PerVine > 0)
        {
            parts.Add($"{Measure.LeafArea.Text(state.Units, row.LeafAreaM2PerVine, 1)} of leaf a vine");
            if (row.MeanLeafAgeD is { } age && row.MeanLeafEfficiency is { } efficiency)
                parts.Add(
                    $"mean age {Measure.Number(age, 0)} days, efficiency {Measure.Number(100 * efficiency, 0)} %");
            if (row.SugarBrix is { } brix) parts.Add($"{Measure.Number(brix, 1)} Brix");
            var gain = Measure.SmallMass.Text(
                state.Units, row.NetAssimilationGCo2PerVine, state.Units == Units.Us ? 2 : 0);
            parts.Add($"{gain} of CO₂ gained a vine");
        }
        else
        {
            parts.Add(row.Stage == "dormant" ? "the buds have not broken" : "no leaf is out");
        }

        while (parts.Count > 1 && Lines().Count > MostFactLines) parts.RemoveAt(parts.Count - 1);
        return (heading, Lines());

        IReadOnlyList<string> Lines()
        {
            var text = string.Join("; ", parts);
            return ScreenText.Wrap(char.ToUpperInvariant(text[0]) + text[1..] + ".", TextKind.Plain, sheet.Scale,
                width);
        }
    }

    internal static string SeasonDate(DateOnly date) =>
        $"{ChartAxis.DayText(date, isShort: false)} {Measure.Number(date.Year, 0)}";

    internal static string HourWords(int hour) => $"{hour}:00 to {hour + 1}:00";

    private static string ProgressWords(ScreenModel model) => model.ComputedShare is { } share
        ? $"the season is being computed, {Measure.Number(100 * share, 0)} % done"
        : "the season is being computed";

    private static void AddPlay(Sheet sheet, string name, Playing what, string caption, string key, SKRect box)
    {
        var isPlaying = sheet.State.Playing == what;
        sheet.Add(new PushButton
        {
            Name = name,
            Bounds = box,
            Caption = isPlaying ? "Pause" : caption,
            Key = key,
            Tip = what == Playing.Day ? "Run through the day from sunrise to sunset"
                : "Run through the season day by day",
            Symbol = isPlaying ? SymbolKind.Pause : SymbolKind.Play,
            Act = () => sheet.Model.TogglePlaying(what),
        });
    }
}
