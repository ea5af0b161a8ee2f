using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Why a check does not apply.</summary>
/// <param name="Upset">True when it is an upset, and not the equipment at rest.</param>
/// <param name="SaidBy">The record that says so.</param>
internal sealed record Rest(string Why, bool Upset, JournalRecord SaidBy);

/// <summary>What went on around the rounds of a stretch: equipment at rest, and upsets. Safety points apply through both.</summary>
internal sealed record Circumstances(EquipmentHistory Equipment, IReadOnlyList<UpsetThen> Upsets, Func<long, JournalRecord> Read)
{
    /// <param name="then">The state at the stretch's end.</param>
    public static Circumstances Of(Desk desk, State then, IReadOnlyList<JournalRecord> records, DateTimeOffset from)
    {
        var bySeq = records.ToDictionary(r => r.Seq);
        JournalRecord Read(long seq)
        {
            if (!bySeq.TryGetValue(seq, out var record))
            {
                bySeq[seq] = record = desk.Store.Read(seq).First();
            }

            return record;
        }

        return new Circumstances(EquipmentHistory.Of(desk, records, from), UpsetThen.Of(desk, then, records), Read);
    }

    /// <summary>Why a check that falls due then does not apply; null when it does.</summary>
    /// <param name="insteadOfTrip">What is read instead of a defeated trip is never more needed than in an upset.</param>
    /// <param name="saidBy">Only what was typed by then.</param>
    public Rest? Rests(Site site, Point? point, DateTimeOffset dueAt, bool insteadOfTrip, DateTimeOffset saidBy)
    {
        if (point is not { Always: false })
        {
            return null;
        }

        return Equipment.At(point.Equipment, dueAt, seq => Read(seq).Entered <= saidBy) is { } change && !EquipmentHistory.Runs(change.Body.State)
            ? new Rest($"{Say.Equipment(site, change.Body.Equipment)} {change.Body.State} since {Say.Time(site, change.Body.Since, dueAt)}", Upset: false, Read(change.Seq))
            : !insteadOfTrip && Upsets.FirstOrDefault(u => u.Began <= dueAt && (u.End is null || dueAt < u.End) && u.Begun.Entered <= saidBy) is { } upset
                ? new Rest($"upset {(upset.End is null ? "since" : "from")} {Say.Time(site, upset.Began, dueAt)}{(upset.End is { } end ? $" to {Say.Time(site, end, dueAt)}" : "")}", Upset: true, upset.Begun)
                : null;
    }
}
