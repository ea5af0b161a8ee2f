using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>Gas and leaks that a reading showed beyond the urgent limit, each reading once, whether it was answered or is over since.</summary>
internal static class ReadAsHazard
{
    public static IEnumerable<AuditFlag> Of(AuditSpan span) =>
        from entry in span.Entries
        where entry.Record.At >= span.From
        from finding in entry.Entry.Findings
        where finding is { Level: Level.Urgent, Point: not null } && finding.Code != "step"
        let point = span.Desk.Site.FindPoint(finding.Point!)
        where point is not null
        let word = Hazards.WordOf(point, finding.Level)
        where word is "gas" or "release"
        select new AuditFlag(
            Audit.Hazard, entry.Record.Shift, entry.Record.At, entry.Entry.Round, finding.Point,
            $"{word}, read: {Say.Sentence(finding.Text)} {Say.Day(span.Desk.Site, entry.Record.At)} {Say.Person(span.Desk.Site, entry.Record.By)} {Say.Ref(entry.Record.Seq)}", entry.Record.Seq);
}
