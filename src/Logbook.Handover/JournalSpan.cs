using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>Which stretch of the journal a question needs.</summary>
internal static class JournalSpan
{
    // A record's time may differ from its readings' own times: a walk typed later, rows of a file.
    private static readonly TimeSpan Slack = TimeSpan.FromHours(12);

    /// <summary>When the log began; now when it is empty. Before that nobody could have kept it, so nothing was missed.</summary>
    public static DateTimeOffset Begin(Desk desk) => desk.State.Adopted is [var first, ..] ? first.At : desk.Now;

    /// <summary>
    /// Every record that may speak of [from, to], and the corrections of its entries, which may have come weeks later. What they
    /// say, without the bytes that it was read from: of years those would be most of the memory.
    /// </summary>
    public static IReadOnlyList<JournalRecord> Touching(Desk desk, DateTimeOffset from, DateTimeOffset to)
    {
        var records = desk.Store.Between(from - Slack, to + Slack).Select(r => r with { Bytes = default }).ToList();
        var corrections = records.Count == 0 ? [] : desk.Store.Corrections(records[0].Seq, records[^1].Seq);
        return [.. records.UnionBy(corrections, r => r.Seq).OrderBy(r => r.Seq)];
    }

    /// <summary>The state as it was known at <paramref name="moment"/>.</summary>
    public static State StateAt(Desk desk, DateTimeOffset moment) => moment >= desk.Now
        ? desk.State
        : Replay.AsOf(desk.Store, moment);
}
