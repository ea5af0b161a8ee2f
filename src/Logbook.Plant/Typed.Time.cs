using System.Globalization;

namespace Logbook.Plant;

public static partial class Typed
{
    private static readonly string[] LocalForms =
        [.. from gap in new[] { "'T'", " " } from time in new[] { "HH:mm", "HH:mm:ss", "HH:mm:ss.FFFFFFF" } select $"yyyy-MM-dd{gap}{time}"];

    private static readonly string[] OffsetForms = [.. LocalForms.Select(f => f + "zzz"), .. LocalForms.Select(f => f + "'Z'")];

    private static readonly string[] OfDay = ["HH:mm", "H:mm", "HH:mm:ss"];

    /// <summary>What is accepted where any time may be given.</summary>
    public const string TimeForms = "accepted: 2026-11-25T10:00, 2026-11-25T10:00-05:00, or 10:00 of today";

    /// <summary>
    /// ISO 8601 (<c>2026-11-25T10:00</c>, <c>2026-11-25T10:00-05:00</c>) or <c>10:00</c> of the site's day. Without offset it is
    /// site time; one in the repeated hour is refused with both readings named, one in the missing hour is refused.
    /// </summary>
    public static DateTimeOffset? Time(string text, Site site, DateTimeOffset now, Place place, out Mistake? mistake)
    {
        var typed = text.Trim();
        mistake = null;
        if (WithOffset(typed) is { } instant)
        {
            return InRange(instant.UtcDateTime) ? Calendar.ToSite(site, instant) : Refuse(place, $"'{typed}' is not a time of this log", TimeForms, out mistake);
        }

        if (Local(typed, Calendar.ToSite(site, now)) is not { } local || !InRange(local))
        {
            return Refuse(place, $"'{typed}' is not a time", TimeForms, out mistake);
        }

        var offsets = WallClock.Offsets(site.Zone, local);
        switch (offsets.Count)
        {
            case 0:
                return Refuse(place, $"'{typed}' did not exist at the site: the clock was put forward over it", $"from {Calendar.AtSite(site, local):HH:mm} on it exists", out mistake);
            case 1:
                return new DateTimeOffset(local, offsets[0]);
            default:
                var both = offsets.Select(o => new DateTimeOffset(local, o).ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture));
                return Refuse(place, $"'{typed}' came twice at the site: the clock was put back over it", $"accepted: {string.Join(" for the first, ", both)} for the second", out mistake);
        }
    }

    /// <summary>For what is still to come: a time of day that has passed is the next day's.</summary>
    public static DateTimeOffset? TimeAhead(string text, Site site, DateTimeOffset now, Place place, out Mistake? mistake)
    {
        var at = Time(text, site, now, place, out mistake);
        return at <= now && IsOfDay(text) ? Time(text, site, now.AddDays(1), place, out mistake) : at;
    }

    /// <summary>For what has been: a time of day that is still to come is the day before's, when that was within <see cref="Lately"/>.</summary>
    public static DateTimeOffset? TimeBack(string text, Site site, DateTimeOffset now, Place place, out Mistake? mistake)
    {
        var at = Time(text, site, now, place, out mistake);
        return at > now + Grace && IsOfDay(text) && Time(text, site, now.AddDays(-1), place, out _) is { } before && before >= now - Lately ? before : at;
    }

    /// <summary>Further back nobody means a bare time of day unseen.</summary>
    public static readonly TimeSpan Lately = TimeSpan.FromHours(12);

    /// <summary>Clocks of two machines differ by this much without anybody being wrong.</summary>
    public static readonly TimeSpan Grace = TimeSpan.FromMinutes(1);

    /// <summary>True for a time without its date.</summary>
    public static bool IsOfDay(string text) => TimeOnly.TryParseExact(text.Trim(), OfDay, CultureInfo.InvariantCulture, DateTimeStyles.None, out _);

    private static DateTimeOffset? Refuse(Place place, string wrong, string accepted, out Mistake? mistake)
    {
        mistake = new Mistake(place, wrong, accepted);
        return null;
    }

    private static bool InRange(DateTime time) => time.Year is >= 1970 and < 2200;

    private static DateTimeOffset? WithOffset(string typed) =>
        DateTimeOffset.TryParseExact(typed, OffsetForms, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var instant) ? instant : null;

    private static DateTime? Local(string typed, DateTimeOffset now)
    {
        if (TimeOnly.TryParseExact(typed, OfDay, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
        {
            return now.Date + time.ToTimeSpan();
        }

        return DateTime.TryParseExact(typed, LocalForms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local) ? local : null;
    }
}
