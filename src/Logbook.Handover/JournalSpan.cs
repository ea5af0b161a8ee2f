using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>Which stretch of the journal a question needs.</summary>
internal static class JournalSpan
{
    // A record's time may differ from its readings' own times: a walk typed later, rows of a file.
    private static readonly TimeSpan Slack = TimeSpan.FromHours(12);

    /// <summary>When the log began; now when it is empty. Before that nobody could have kept it, so nothing was missed.</summary>
    public static DateTimeOffset Begin(Desk desk) => desk.Store.Read().FirstOrDefault()?.At ?? desk.Now;

    /// <summary>Every record from <paramref name="from"/> on. Up to the end, because a correction may come weeks later.</summary>
    public static IReadOnlyList<JournalRecord> Touching(Desk desk, DateTimeOffset from) =>
        [.. desk.Store.Between(from - Slack, desk.Now + Slack).OrderBy(r => r.Seq)];

    /// <summary>The last record before <paramref name="moment"/> that is meant; null when there is none. Looks near first.</summary>
    public static JournalRecord? LastBefore(Desk desk, DateTimeOffset moment, Func<JournalRecord, bool> isMeant)
    {
        var begun = Begin(desk);
        for (var (days, end) = (2, moment); end > begun; days *= 4)
        {
            var start = end.AddDays(-days);
            if (desk.Store.Between(start, end).LastOrDefault(isMeant) is { } found)
            {
                return found;
            }

            end = start;
        }

        return null;
    }

    /// <summary>The state as it was known at <paramref name="moment"/>.</summary>
    public static State StateAt(Desk desk, DateTimeOffset moment) => moment >= desk.Now
        ? desk.State
        : desk.Store.Read().TakeWhile(r => r.Seq <= desk.State.Head.Seq).Where(r => r.Entered <= moment)
            .Aggregate(State.Empty, (state, record) => state.Apply(record));
}
