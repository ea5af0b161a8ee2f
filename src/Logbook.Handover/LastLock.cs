using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Whose lock came off with the closing of an isolation, or was recorded as on when it ended: the log shows no lock of it any more.</summary>
internal static class LastLock
{
    /// <summary><c>; own lock off</c>, <c>; LOCK STILL RECORDED AS ON: Operator one</c>; empty for what no lock hung on, or is open.</summary>
    public static string Words(Site site, IEnumerable<JournalRecord> records, JournalRecord opened, JournalRecord? closed)
    {
        if (closed?.Body is not CarryClosed { Lock: null })
        {
            return closed is null ? "" : "; own lock off";
        }

        var on = records.Where(r => r.Seq < closed.Seq && r.Body is CarryConfirmed { Lock: not null } look && look.Id == opened.Seq)
            .GroupBy(r => r.By, StringComparer.OrdinalIgnoreCase).Where(steps => ((CarryConfirmed)steps.MaxBy(r => r.Seq)!.Body).Lock == "on").Select(steps => Say.Person(site, steps.Key)).ToList();
        return on.Count == 0 ? "" : $"; LOCK STILL RECORDED AS ON: {string.Join(", ", on)}";
    }
}
