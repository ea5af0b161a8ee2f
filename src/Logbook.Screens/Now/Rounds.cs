using Logbook.Checks;
using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>Rounds that are open or missed in this shift, with the minutes; what is read instead of a defeated trip first.</summary>
internal static class Rounds
{
    public static IEnumerable<Line> Draw(Session session)
    {
        foreach (var open in Open(session))
        {
            var late = session.Clock >= open.Closes;
            foreach (var line in Gutter.Lines(late ? "late" : "due", late ? Look.Watch : Look.Strong, $"{open.Title} {RoundWords.Due(session, open)}", session.Width))
            {
                yield return line;
            }
        }

        foreach (var next in session.Facts.Now.Instead.Where(r => r.State == CheckState.Coming))
        {
            foreach (var line in Gutter.Lines("next", Look.Strong, $"{next.Title} {Say.Time(session.Site, next.DueAt, session.Clock)}", session.Width))
            {
                yield return line;
            }
        }

        foreach (var missed in Missed(session.Facts.Now.Instead.Concat(session.Facts.Now.Rounds)))
        {
            var slots = missed.OrderByDescending(r => r.DueAt).Select(r => $"{Say.Time(session.Site, r.DueAt, session.Clock)} ({r.Of - r.Done} of {r.Of} not done{(r.SaidLater.Length > 0 ? ", " : "")}{r.SaidLater})").ToList();
            var last = missed.Max(r => r.Closes);
            foreach (var line in Gutter.Lines("missed", Look.Watch, $"{missed.Key}: {string.Join(", ", slots)}; closed {RoundWords.Span(session.Clock - last)} ago", session.Width))
            {
                yield return line;
            }
        }
    }

    /// <summary>The same in one line, what can still be done first; empty when nothing is due or missed.</summary>
    public static string Shortly(Session session)
    {
        var now = session.Facts.Now;
        string Times(IGrouping<string, RoundNow> m) => $"MISSED {m.Key} {Say.Time(session.Site, m.Max(r => r.DueAt), session.Clock)}{(m.Count() > 1 ? FormattableString.Invariant($" and {m.Count() - 1} before") : "")}";
        return string.Join("; ",
        [
            .. Open(session).Take(2).Select(r => $"{r.Title} {(session.Clock < r.Closes ? $"closes in {RoundWords.Span(r.Closes - session.Clock)}" : "LATE")}"),
            .. Missed(now.Instead).Concat(Missed(now.Rounds)).Select(Times),
        ]);
    }

    private static IEnumerable<RoundNow> Open(Session session) =>
        session.Facts.Now.Instead.Where(IsOpen).OrderBy(r => r.Closes).Concat(session.Facts.Now.Rounds.Where(IsOpen).OrderBy(r => r.Closes));

    private static IEnumerable<IGrouping<string, RoundNow>> Missed(IEnumerable<RoundNow> rounds) =>
        rounds.Where(r => r.State == CheckState.Missed).GroupBy(r => r.Title, StringComparer.Ordinal);

    private static bool IsOpen(RoundNow round) => round.State == CheckState.Due;
}
