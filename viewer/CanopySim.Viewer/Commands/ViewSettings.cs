using System.ComponentModel;
using System.Globalization;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Painting;
using CanopySim.Drawing.Pictures;
using CanopySim.Drawing.Views;
using CanopySim.Files;
using CanopySim.Files.Charts;
using CanopySim.Files.Recording;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.State;
using Spectre.Console.Cli;

namespace CanopySim.Viewer.Commands;

/// <summary>The command line of the viewer.</summary>
public sealed class ViewSettings : CommandSettings
{
    private const int LeastSide = 200;
    private const int MostSide = 8000;

    [CommandArgument(0, "<SCENARIO|RESULTS>")]
    [Description("A results folder with season.bin (canopysim season --record), that file, or a scenario, which is "
        + "then computed at draft quality.")]
    public string Source { get; init; } = "";

    [CommandOption("--picture <FILE.png>")]
    [Description("Writes a picture instead of opening the window.")]
    public string? Picture { get; init; }

    [CommandOption("--film <FILE.gif>")]
    [Description("Writes a film instead of opening the window.")]
    public string? Film { get; init; }

    [CommandOption("--of <WHAT>")]
    [Description("What a film shows: season (default), day by day, or day, hour by hour.")]
    public string Of { get; init; } = "season";

    [CommandOption("--date <DAY>")]
    [Description("The day, as 2025-07-20; the day with the most leaf by default.")]
    public string? Date { get; init; }

    [CommandOption("--time <HH:MM>")]
    [Description("Local standard time; 10:30 by default.")]
    public string Time { get; init; } = "10:30";

    [CommandOption("--color <QUANTITY>")]
    [Description("What leaves are colored by: age (default), efficiency, light-now, light-of-day, temperature-now, "
        + "assimilation-now, carbon-of-day, ripening-share or shoot.")]
    public string Color { get; init; } = "age";

    [CommandOption("--from <VIEW>")]
    [Description("along (default) or across the row, sun (as the sun sees it) or above.")]
    public string From { get; init; } = "along";

    [CommandOption("--size <WxH>")]
    [Description("Pixels; 1280x800 by default, 640x400 for a film.")]
    public string? Size { get; init; }

    [CommandOption("--theme <THEME>")]
    [Description("light (default) or dark.")]
    public string Theme { get; init; } = "light";

    [CommandOption("--units <SYSTEM>")]
    [Description("metric (default) or us.")]
    public string UnitsText { get; init; } = "metric";

    [CommandOption("--quiet")]
    [Description("Prints nothing but errors.")]
    public bool Quiet { get; init; }

    [CommandOption("--report <FILE>", IsHidden = true)]
    [Description("Writes the screen as JSON after each frame, for tests that drive the window.")]
    public string? Report { get; init; }

    /// <summary>What the window shows first: the day that was asked for, else the one that tells most.</summary>
    public ViewState FirstState(SeasonRecording recording)
    {
        var first = recording.DayCount > 0 ? recording.Row(0).Date : default;
        return new ViewState
        {
            Day = Day is { } date ? Math.Max(0, date.DayNumber - first.DayNumber)
                : ScreenModel.FirstDayInSight(recording),
            Hour = (int)Hour,
            Quantity = Quantity,
            Theme = Options.Theme == SceneTheme.Dark ? ScreenTheme.Dark : ScreenTheme.Light,
            Units = Units,
        };
    }

    /// <summary>Whether a film is of a day.</summary>
    public bool IsOfDay => OneOf("--of", Of, ("season", false), ("day", true));

    public LeafQuantity Quantity =>
        OneOf("--color", Color, [.. Enum.GetValues<LeafQuantity>().Select(quantity => (NameOf(quantity), quantity))]);

    /// <summary>Hours since midnight, local standard time.</summary>
    public double Hour => TimeOnly.TryParseExact(Time.Trim(), ["HH:mm", "H:mm"], CultureInfo.InvariantCulture,
        DateTimeStyles.None, out var time)
        ? time.ToTimeSpan().TotalHours
        : throw Wrong("--time", Time, "a time of day such as 10:30");

    /// <summary>The day that was asked for; null for none.</summary>
    public DateOnly? Day => Date switch
    {
        null => null,
        _ when DateOnly.TryParseExact(Date.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None,
            out var date) => date,
        _ => throw Wrong("--date", Date, "a day such as 2025-07-20"),
    };

    public Units Units => OneOf("--units", UnitsText, ("metric", Units.Metric), ("us", Units.Us));

    /// <summary>How pictures look.</summary>
    public PictureOptions Options
    {
        get
        {
            var (width, height) = SizeOf(Size ?? (Film is null ? "1280x800" : "640x400"));
            return new PictureOptions
            {
                Width = width,
                Height = height,
                From = OneOf("--from", From, ("along", ViewPoint.Along), ("across", ViewPoint.Across),
                    ("sun", ViewPoint.Sun), ("above", ViewPoint.Above)),
                Theme = OneOf("--theme", Theme, ("light", SceneTheme.Light), ("dark", SceneTheme.Dark)),
                Units = Units,
            };
        }
    }

    // LightOfDay as light-of-day.
    private static string NameOf(LeafQuantity quantity) =>
        string.Concat(quantity.ToString().Select((letter, i) =>
            char.IsUpper(letter) && i > 0 ? $"-{letter}" : $"{letter}")).ToLowerInvariant();

    private static (int Width, int Height) SizeOf(string text)
    {
        var parts = text.Split('x', '×');
        return parts.Length == 2 && Side(parts[0]) is int width && Side(parts[1]) is int height
            ? (width, height)
            : throw Wrong("--size", text, $"width and height such as 1280x800, each from {LeastSide} to {MostSide}");

        static int? Side(string part) =>
            int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var side)
                && side is >= LeastSide and <= MostSide ? side : null;
    }

    private static T OneOf<T>(string option, string text, params (string Name, T Value)[] values)
    {
        foreach (var (name, value) in values)
            if (name.Equals(text.Trim(), StringComparison.OrdinalIgnoreCase)) return value;
        throw Wrong(option, text, string.Join(", ", values.Select(value => value.Name)));
    }

    private static InputError Wrong(string option, string found, string expected) =>
        new(new InputPlace(option), InputError.Quote(found), expected);
}
