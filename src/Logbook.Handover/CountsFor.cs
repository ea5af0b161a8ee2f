using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Which slot of its round an entry counts for: said when it is saved, because near a shift change it is not plain.</summary>
public static class CountsFor
{
    // Longer than half the time between two slots of any round that is not of a whole period.
    private static readonly TimeSpan Around = TimeSpan.FromHours(13);

    /// <summary>In words; null for an entry of no round, or of one that lasts a whole period: whenever it is read it counts for that.</summary>
    public static string? Words(Desk desk, JournalRecord record) => Find(desk, record, at => DueList.Between(desk, at - Around, at + Around))?.Words;

    /// <summary>
    /// The same for what was read shortly before the shift's end and counts for the next one, and for a walk that counts for none:
    /// no other line of the note tells of them.
    /// </summary>
    internal static IEnumerable<NoteLine> Beyond(ShiftFacts facts)
    {
        var late = facts.Entries.Where(e => e.Record.At > facts.Shift.End - Near && e.Entry.Round is not null).ToList();
        IReadOnlyList<DueCheck> around = late.Count == 0 ? [] : DueList.Between(facts.Desk, facts.Shift.End - Near - Around, facts.Shift.End + Around);
        return from entry in late
               let found = Find(facts.Desk, entry.Record, _ => around)
               where found is { Shift: { } shift } ? shift != facts.Shift.Id : found is not null && facts.Site.FindRound(entry.Entry.Round!) is { Field: true }
               select new NoteLine("early", $"{found.Value.Words} {Say.Ref(entry.Record.Seq)}");
    }

    private static readonly TimeSpan Near = TimeSpan.FromHours(2);

    private static (string Words, string? Shift)? Find(Desk desk, JournalRecord record, Func<DateTimeOffset, IReadOnlyList<DueCheck>> checksAround)
    {
        if (record.Body is not Entry { Round: { } id } entry || desk.Site.FindRound(id) is not { Schedule: not Schedule.Per } round || !entry.Readings.Any(r => !r.NotTaken))
        {
            return null;
        }

        var site = desk.Site;
        var at = entry.WalkStart ?? entry.Readings.Where(r => !r.NotTaken).Min(r => r.At);
        string Time(DateTimeOffset time) => Say.Time(site, time, at);
        var checks = checksAround(at).Where(c => c.Round.Equals(round.Id, StringComparison.OrdinalIgnoreCase)).ToList();
        if (checks.Find(c => c.Seq == record.Seq) is { } own)
        {
            var next = own.ShiftId == Calendar.ShiftAt(site, at).Id ? "" : $", of the shift {own.ShiftId}";
            return ($"{Say.Visible(round.Title)} read {Time(at)} counts{(own.State == CheckState.Late ? " LATE" : "")} for the one of {Time(own.DueAt)}, open {Time(own.Opens)} to {Time(own.Closes)}{next}", own.ShiftId);
        }

        return checks.MinBy(c => (c.DueAt - at).Duration()) is not { } nearest ? null
            : at < nearest.Opens ? ($"{Say.Visible(round.Title)} read {Time(at)} COUNTS FOR NONE: the one of {Time(nearest.DueAt)} opens at {Time(nearest.Opens)}", null)
            : ($"the {Say.Visible(round.Title)} of {Time(nearest.DueAt)} has its readings already", nearest.ShiftId);
    }
}
