using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>When a round is due, in words with minutes.</summary>
internal static class RoundWords
{
    public static string Due(Session session, RoundNow slot)
    {
        var now = session.Clock;
        var due = now < slot.DueAt ? $"in {Span(slot.DueAt - now)}" : $"{Span(now - slot.DueAt)} ago";
        var closes = now < slot.Closes ? $"closes {Time(session, slot.Closes)}, in {Span(slot.Closes - now)}" : $"closed {Time(session, slot.Closes)}, may still be typed on time";
        return $"due {Time(session, slot.DueAt)}, {due}: {slot.Done} of {slot.Of} done, {closes}";
    }

    /// <summary><c>12 min</c>, <c>2 h 5 min</c>, <c>3 days</c>.</summary>
    public static string Span(TimeSpan span) => span.TotalDays >= 2 ? Say.Count((int)span.TotalDays, "day")
        : span.TotalHours >= 1 ? $"{(int)span.TotalHours} h{(span.Minutes == 0 ? "" : $" {span.Minutes} min")}"
        : $"{(int)Math.Ceiling(span.TotalMinutes)} min";

    private static string Time(Session session, DateTimeOffset at) => Say.Time(session.Site, at, session.Clock);
}
