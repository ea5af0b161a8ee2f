using System.Globalization;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>
/// A time of day as it is typed on a keypad: <c>0935</c> or <c>9:35</c>. It has been, so shortly after midnight 2340 is last
/// night's. Further back than half a day nobody means it unseen: the date is asked for.
/// </summary>
internal static class ClockText
{
    public static string Accepted(Site site, DateTimeOffset now) => $"0935 or 9:35, within the last twelve hours; before that with its date: {Day(site, now, -1)} 19:50";

    /// <summary>For a time that is still to come.</summary>
    public static string Ahead(Site site, DateTimeOffset now) => $"1430 or 14:30, within the next day; later with its date: {Day(site, now, 2)} 19:00";

    public static DateTimeOffset? Read(string text, Site site, DateTimeOffset now, out string mistake)
    {
        var clock = Clock(text);
        var at = Typed.TimeBack(clock, site, now, Place.Unknown, out var wrong);
        mistake = wrong is not null ? Words(wrong, Accepted(site, now))
            : at > now + Typed.Grace ? $"{clock} is still to come; if it was yesterday, with its date: {Day(site, now, -1)} {clock}"
            : Typed.IsOfDay(clock) && at < now - Typed.Lately ? $"{clock} was more than twelve hours ago; if so, with its date: {Day(site, now, 0)} {clock}"
            : "";
        return mistake.Length == 0 ? at : null;
    }

    /// <summary>A time of day that has passed is tomorrow's.</summary>
    public static DateTimeOffset? ReadAhead(string text, Site site, DateTimeOffset now, out string mistake)
    {
        var clock = Clock(text);
        var at = Typed.TimeAhead(clock, site, now, Place.Unknown, out var wrong);
        mistake = wrong is not null ? Words(wrong, Ahead(site, now)) : at <= now ? $"{clock} is over already" : "";
        return mistake.Length == 0 ? at : null;
    }

    /// <summary>The same words as the hint at the question; of an hour that came twice its two readings.</summary>
    private static string Words(Mistake wrong, string accepted) =>
        (wrong.Accepted == Typed.TimeForms ? wrong with { Accepted = $"accepted: {accepted}" } : wrong).ToString();

    private static string Clock(string text)
    {
        var typed = text.Trim();
        return typed.Length is 3 or 4 && typed.All(char.IsAsciiDigit) ? $"{typed[..^2]}:{typed[^2..]}" : typed;
    }

    private static string Day(Site site, DateTimeOffset now, int days) => Plant.Calendar.ToSite(site, now).AddDays(days).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
