using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Who told last how many are inside under a permit, and whether that was its owner: on that word it is closed.</summary>
internal static class LastCount
{
    /// <summary><c>; last counted 0 09:00 Operator two, who is not its owner (#12)</c>; empty for what is no permit, or was not counted in these records.</summary>
    /// <param name="closed">The record that closed it; null while it is open.</param>
    /// <param name="time">How a time is said there.</param>
    public static string Words(Site site, IEnumerable<JournalRecord> records, JournalRecord opened, JournalRecord? closed, Func<DateTimeOffset, string> time)
    {
        var last = opened.Body is Carry { ItemKind: "permit" }
            ? records.Where(r => r.Body is CarryConfirmed look && look.Id == opened.Seq && look.Fields.ContainsKey("inside") && (closed is null || r.Seq < closed.Seq)).MaxBy(r => r.Seq)
            : null;
        var owner = last is null ? null : records.Where(r => r.Seq < last.Seq && r.Body is CarryConfirmed { Owner: not null } look && look.Id == opened.Seq).MaxBy(r => r.Seq)?.Body is CarryConfirmed named ? named.Owner
            : ((Carry)opened.Body).Owner ?? opened.By;
        return last is null ? ""
            : $"; last counted {Say.Visible(((CarryConfirmed)last.Body).Fields["inside"])} {time(last.At)} {Say.Person(site, last.By)}{(Handed.Same(last.By, owner) ? "" : ", who is not its owner")}{(((CarryConfirmed)last.Body).Signed is { } signed ? StepWords.By(site, signed) : "")} {Say.Ref(last.Seq)}";
    }
}
