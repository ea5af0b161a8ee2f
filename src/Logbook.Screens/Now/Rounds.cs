using Logbook.Checks;
using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>Rounds that are open or missed in this shift, with the minutes.</summary>
internal static class Rounds
{
    public static IEnumerable<Line> Draw(Session session)
    {
        var rounds = session.Facts.Now.Rounds;
        foreach (var open in rounds.Where(r => r.State == CheckState.Due).OrderBy(r => r.Closes))
        {
            var late = session.Clock >= open.Closes;
            foreach (var line in Gutter.Lines(late ? "late" : "due", late ? Look.Watch : Look.Strong, $"{open.Title} {RoundWords.Due(session, open)}", session.Width))
            {
                yield return line;
            }
        }

        foreach (var missed in rounds.Where(r => r.State == CheckState.Missed).GroupBy(r => r.Title, StringComparer.Ordinal))
        {
            var slots = missed.OrderByDescending(r => r.DueAt).Select(r => $"{Say.Time(session.Site, r.DueAt, session.Clock)} ({r.Of - r.Done} of {r.Of} not done)").ToList();
            var last = missed.Max(r => r.Closes);
            foreach (var line in Gutter.Lines("missed", Look.Watch, $"{missed.Key}: {string.Join(", ", slots)}; closed {RoundWords.Span(session.Clock - last)} ago", session.Width))
            {
                yield return line;
            }
        }
    }
}
