using System.Globalization;
using System.Text.RegularExpressions;
using CanopySim.Files.Text;
using NodaTime;
using NodaTime.Text;

namespace CanopySim.Files;

/// <summary>
/// Clock times of a site: which instant a local time is, and how far standard time is from universal time.
/// </summary>
public sealed partial class SiteTime
{
    private readonly DateTimeZone _zone;

    private SiteTime(DateTimeZone zone) => _zone = zone;

    /// <summary>
    /// The zone by a name of the time zone database (America/Los_Angeles) or an offset (UTC-08:00); null for neither.
    /// </summary>
    public static SiteTime? TryOf(string timeZone)
    {
        if (Offset().Match(timeZone.Replace('−', '-')) is { Success: true } match)
        {
            var minutes = 0;
            if (match.Groups["hours"].Success)
            {
                minutes = 60 * int.Parse(match.Groups["hours"].ValueSpan, CultureInfo.InvariantCulture);
                if (match.Groups["minutes"].Success)
                    minutes += int.Parse(match.Groups["minutes"].ValueSpan, CultureInfo.InvariantCulture);
                if (match.Groups["sign"].Value == "-") minutes = -minutes;
            }

            if (minutes is < -12 * 60 or > 14 * 60) return null;
            return new SiteTime(DateTimeZone.ForOffset(NodaTime.Offset.FromSeconds(minutes * 60)));
        }

        return DateTimeZoneProviders.Tzdb.GetZoneOrNull(timeZone) is DateTimeZone zone ? new SiteTime(zone) : null;
    }

    /// <summary>The zone of a site that was read from a scenario.</summary>
    public static SiteTime Of(Site site) => TryOf(site.TimeZone)
        ?? throw new InputError(
            new InputPlace("scenario"),
            InputError.Quote(site.TimeZone),
            Expected,
            "site.time_zone",
            Nearest(site.TimeZone));

    internal const string Expected = "a zone such as America/Los_Angeles, or an offset such as UTC-08:00";

    internal static string? Nearest(string timeZone) => NearestName.Among(timeZone, DateTimeZoneProviders.Tzdb.Ids);

    /// <summary>
    /// Hours that standard time is ahead of universal time at the start of a year; daylight saving is no part of it.
    /// </summary>
    public double StandardOffsetHours(int year = 2024) =>
        _zone.GetZoneInterval(Instant.FromUtc(year, 1, 1, 0, 0)).StandardOffset.Seconds / 3600.0;

    /// <summary>
    /// The instant that a text names (<c>2024-07-01T13:30</c>, with seconds, a Z or an offset where wanted). Without an
    /// offset it
    /// is the site's local time; of the two instants of an hour that comes twice, the first.
    /// </summary>
    /// <param name="text">The time.</param>
    /// <param name="place">Where it was given: an option or a file.</param>
    public DateTimeOffset Read(string text, InputPlace place)
    {
        var trimmed = text.Trim().Replace(' ', 'T');
        var withOffset = OffsetDateTimePattern.ExtendedIso.Parse(Seconds(trimmed));
        if (withOffset.Success) return withOffset.Value.ToDateTimeOffset().ToUniversalTime();
        var local = LocalDateTimePattern.ExtendedIso.Parse(Seconds(trimmed));
        if (!local.Success)
            throw new InputError(
                place,
                $"{InputError.Quote(text)} is no time",
                "a time such as 2024-07-01T13:30, or with an offset 2024-07-01T13:30-07:00");
        var mapping = _zone.MapLocal(local.Value);
        return mapping.Count == 0
            ? throw new InputError(
                place, $"{InputError.Quote(text)}, which the clocks skip in {_zone.Id}", "a time that the clocks show")
            : mapping.First().ToDateTimeOffset().ToUniversalTime();
    }

    // The pattern asks for seconds; people leave them out.
    private static string Seconds(string text) => WithoutSeconds().Replace(text, "$1:00$2", 1);

    [GeneratedRegex(@"^(?:UTC|GMT)(?:(?<sign>[+-])(?<hours>[0-9]{1,2})(?::(?<minutes>[0-5][0-9]))?)?$")]
    private static partial Regex Offset();

    [GeneratedRegex(@"^(\d{4}-\d\d-\d\dT\d\d:\d\d)(Z|[+-]\d\d(?::\d\d)?)?$")]
    private static partial Regex WithoutSeconds();
}
