using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>When a round is due, in words with minutes.</summary>
internal static class RoundWords
{
    private static readonly TimeSpan Near = TimeSpan.FromHours(1);

    /// <summary><c>10:00: 3 done, 13 open, closes 10:15, in 4 min</c>; what is an hour away by the clock alone. No total, which would grow with each row that was typed and not asked for.</summary>
    public static string Due(Session session, RoundNow slot)
    {
        var now = session.Clock;
        var closes = now < slot.Closes ? $"closes {Time(session, slot.Closes)}{(slot.Closes - now < Near ? $", in {Span(slot.Closes - now)}" : "")}" : $"closed {Span(now - slot.Closes)} ago, a walk of its time may still be typed";
        return $"{Time(session, slot.DueAt)}: {slot.Done} done, {slot.Of - slot.Done} open, {closes}";
    }

    /// <summary><c>12 min</c>, <c>2 h 5 min</c>, <c>3 days</c>.</summary>
    public static string Span(TimeSpan span) => span.TotalDays >= 2 ? Say.Count((int)span.TotalDays, "day")
        : span.TotalHours >= 1 ? $"{(int)span.TotalHours} h{(span.Minutes == 0 ? "" : $" {span.Minutes} min")}"
        : $"{(int)Math.Ceiling(span.TotalMinutes)} min";

    private static string Time(Session session, DateTimeOffset at) => Say.Time(session.Site, at, session.Clock);
}
