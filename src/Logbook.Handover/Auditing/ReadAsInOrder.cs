using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// A trip or a piece of safety equipment that a round read as in order while an item said that it was defeated or out: once for
/// each item and point, from the first such reading on. Which of the two was true the log cannot know.
/// </summary>
internal static class ReadAsInOrder
{
    public static IEnumerable<AuditFlag> Of(AuditSpan span)
    {
        var closed = span.WithHistory.Where(r => r.Body is CarryClosed).ToLookup(r => ((CarryClosed)r.Body).Id);
        var items = span.BeginState.Carried.Concat(span.Records.Select(r => r.Body is Carry carry ? CarriedItem.Opened(r, carry) : null).OfType<CarriedItem>()).DistinctBy(i => i.Id);
        return from item in items
               from point in span.Desk.Site.Points
               where point.Choices.Count > 0 && Hazards.IsOf(span.Desk.Site, item, point)
               let end = closed[item.Id].FirstOrDefault()
               let read = Read(span, item, point, end)
               where read.Count > 0
               select Flag(span, item, point, read, end);
    }

    /// <summary>The readings in order of the stretch while the item was open.</summary>
    private static List<(JournalRecord Record, Reading Reading)> Read(AuditSpan span, CarriedItem item, Point point, JournalRecord? end) =>
    [
        .. from entry in span.Entries
           where entry.Record.At >= span.From && entry.Record.Seq > item.Id && !(entry.Record.Seq > end?.Seq)
           from reading in entry.Entry.Readings
           where Handed.Same(reading.Point, point.Tag) && reading.At > item.Since && Hazards.IsInOrder(point, reading.Value)
           select (entry.Record, reading),
    ];

    private static AuditFlag Flag(AuditSpan span, CarriedItem item, Point point, List<(JournalRecord Record, Reading Reading)> read, JournalRecord? end)
    {
        var (site, (record, reading)) = (span.Desk.Site, read[0]);
        string Who(JournalRecord r) => $"{Say.Day(site, r.At)} {Say.Person(site, r.By)} {Say.Ref(r.Seq)}";
        return new AuditFlag(
            Audit.Contradicted, record.Shift, record.At, null, point.Tag,
            $"{Say.Kind(item.ItemKind)}, {Say.Equipment(site, item.On)}: {Say.Visible(item.Text)} {Say.Ref(item.Id)}, YET READ AS {Say.Value(point, reading.Value!.Value, reading.Unit)}, {Say.Visible(point.Tag)}: one of the two was not true. Began {Who(record)}{(read.Count == 1 ? "" : $", {read.Count} times, last {Who(read[^1].Record)}")}; {(end is null ? $"the item is OPEN at {Say.Day(site, span.End)}" : $"the item was closed {Who(end)}")}",
            record.Seq)
        {
            Evidence =
            [
                "It rests on records alone: an item that nobody closed, or a habit of typing what is usual, explains it as well.",
                "Whoever was at the equipment says which of the two was true; a remark on the record keeps it.",
            ],
        };
    }
}
