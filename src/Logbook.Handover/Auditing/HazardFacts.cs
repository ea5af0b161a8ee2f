using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What could hurt in a stretch, also what was open when it began, each once: opened when and by whom, closed when, by whom and why, or that it was open at its end.</summary>
internal static class HazardFacts
{
    public static IEnumerable<AuditFlag> Of(AuditSpan span)
    {
        var began = span.BeginState;
        // What was opened before the stretch and not closed by then belongs to it as well.
        List<JournalRecord> records = [.. began.Carried.Where(i => i.IsHazard).Select(i => span.Desk.Store.Read(i.Id).First()).UnionBy(span.Records, r => r.Seq)];
        var closed = (from record in records
                      where record.Body is CarryClosed
                      let opened = EndedHazards.Opened(span.Desk, (CarryClosed)record.Body)
                      where opened is not null
                      select (Opened: opened, Closed: (JournalRecord?)record)).ToList();
        var open = from record in records
                   where record.Body is Carry carry && (record.At < span.From || CarriedItem.CanHurt(carry.ItemKind, carry.Text, carry.Fields)) && !closed.Exists(c => c.Opened.Seq == record.Seq)
                   select (Opened: record, Closed: (JournalRecord?)null);
        return closed.Concat(open).Select(h => Item(span, h.Opened, h.Closed)).Concat(Acid(span, began));
    }

    private static AuditFlag Item(AuditSpan span, JournalRecord opened, JournalRecord? closed)
    {
        var (site, carry) = (span.Desk.Site, (Carry)opened.Body);
        var ended = closed is null ? Open(span) : $"closed {Who(span, closed)}: {Say.Visible(((CarryClosed)closed.Body).Why)}{LastLock.Words(site, span.WithHistory, opened, closed)} {Say.Ref(closed.Seq)}";
        return new AuditFlag(
            Audit.Hazard, opened.Shift, opened.At, null, null,
            $"{Say.Kind(carry.ItemKind)}{(carry.Fields.GetValueOrDefault("who") is { } who ? $" of {Say.Person(site, who)}" : "")}, {Say.Equipment(site, carry.On)}: {Say.Visible(carry.Text)}. Opened {Who(span, opened)} {Say.Ref(opened.Seq)}{LastCount.Words(site, span.WithHistory.Where(r => r.At <= span.End), opened, closed, at => Say.Day(site, at))}; {ended}{PastItsEnd(span, opened, closed)}", opened.Seq);
    }

    /// <summary>That it went on past the end that it had then: once it is closed nothing else tells of that.</summary>
    private static string PastItsEnd(AuditSpan span, JournalRecord opened, JournalRecord? closed)
    {
        var moved = span.WithHistory.Where(r => r.Body is CarryConfirmed { Until: not null } look && look.Id == opened.Seq && r.At <= span.End && (closed is null || r.Seq < closed.Seq)).MaxBy(r => r.Seq);
        var (end, over) = ((moved?.Body as CarryConfirmed)?.Until ?? ((Carry)opened.Body).Until, closed?.At ?? span.End);
        return end < over ? $"; PAST ITS END of {Say.Day(span.Desk.Site, end.Value)} by {Say.Span(over - end.Value)}" : "";
    }

    /// <summary>Acid by the state of the equipment: from the first record that says so to the next that says otherwise.</summary>
    private static IEnumerable<AuditFlag> Acid(AuditSpan span, State before)
    {
        var records = before.Equipment.Values.Where(e => e.State == "acid").Select(e => span.Desk.Store.Read(e.Seq).First()).UnionBy(span.Records, r => r.Seq);
        foreach (var states in records.Where(r => r.Body is EquipmentStateChanged).GroupBy(r => ((EquipmentStateChanged)r.Body).Equipment, StringComparer.OrdinalIgnoreCase))
        {
            JournalRecord? began = null;
            foreach (var record in states.OrderBy(r => r.Seq).Append(null))
            {
                var acid = record?.Body is EquipmentStateChanged { State: "acid" };
                if (began is not null && !acid)
                {
                    var told = (EquipmentStateChanged)began.Body;
                    var ended = record is null ? Open(span) : $"{Say.Visible(((EquipmentStateChanged)record.Body).State)}{Why((EquipmentStateChanged)record.Body)} {Who(span, record)} {Say.Ref(record.Seq)}";
                    yield return new AuditFlag(
                        Audit.Hazard, began.Shift, told.Since, null, null, $"acid, {Say.Equipment(span.Desk.Site, told.Equipment)}. In since {Say.Day(span.Desk.Site, told.Since)}{Why(told)}, told by {Say.Person(span.Desk.Site, began.By)} {Say.Ref(began.Seq)}; {ended}", began.Seq);
                }

                began = acid ? began ?? record : null;
            }
        }
    }

    private static string Why(EquipmentStateChanged change) => string.IsNullOrWhiteSpace(change.Why) ? "" : $" ({Say.Visible(change.Why.Trim())})";

    private static string Who(AuditSpan span, JournalRecord record) => $"{Say.Day(span.Desk.Site, record.At)} {Say.Person(span.Desk.Site, record.By)}";

    private static string Open(AuditSpan span) => $"OPEN at {Say.Day(span.Desk.Site, span.End)}";
}
