using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>Which records belong together: a correction and its entry, an item with all that was said of it, an answer and its finding.</summary>
public static class RecordLinks
{
    /// <summary>The records that this one names.</summary>
    public static IEnumerable<long> Of(RecordBody body) => body switch
    {
        Entry { SecondOf: { } seq } => [seq],
        Remark { Related: { } seq } => [seq],
        Correction correction => [correction.Target],
        CarryClosed closed => [closed.Id],
        CarryConfirmed look => [look.Id],
        OrderSeen seen => [seen.Id],
        OrderWithdrawn withdrawn => [withdrawn.Id],
        DepartmentNote { Acknowledges: { } id } => [id],
        ClockJumped { Acknowledges: { } id } => [id],
        FindingAnswered answer => [answer.Seq],
        HandoverAccepted { Prepared: { } prepared } => [prepared],
        HandoverCountersigned signed => [signed.Target],
        HandoverQuestion { About: { } seq } => [seq],
        HandoverAnswer { Question: { } seq } => [seq],
        PersonChanged { Target: { } seq } => [seq],
        _ => [],
    };

    /// <summary>The record and everything that it names or that names it, step by step, in order.</summary>
    public static IReadOnlyList<JournalRecord> About(Desk desk, long seq)
    {
        // The end of an upset names its begin by the time alone.
        var upsets = new Dictionary<DateTimeOffset, long>();
        IEnumerable<long> Named(JournalRecord record) => record.Body is UpsetDeclared upset && !upsets.TryAdd(upset.Began, record.Seq) ? [upsets[upset.Began]] : Of(record.Body);
        var links = desk.Store.Read().SelectMany(r => Named(r).Select(to => (From: r.Seq, To: to))).ToList();
        var found = new HashSet<long> { seq };
        for (var before = 0; before < found.Count;)
        {
            before = found.Count;
            found.UnionWith(links.Where(l => found.Contains(l.To)).Select(l => l.From).ToList());
            found.UnionWith(links.Where(l => found.Contains(l.From)).Select(l => l.To).ToList());
        }

        return [.. desk.Store.Read().Where(r => found.Contains(r.Seq))];
    }
}
