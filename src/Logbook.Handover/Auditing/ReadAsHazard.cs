using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>
/// Gas and leaks that a reading showed beyond the urgent limit, each reading once, whether it was answered or is over since, with
/// who may have been inside anything then.
/// </summary>
internal static class ReadAsHazard
{
    public static IEnumerable<AuditFlag> Of(AuditSpan span) =>
        from entry in span.Entries
        where entry.Record.At >= span.From
        from finding in entry.Entry.Findings
        where finding is { Level: Level.Urgent, Point: not null }
        let point = span.Desk.Site.FindPoint(finding.Point!)
        where point is not null
        let word = Hazards.WordOf(point, finding)
        where word is "gas" or "release"
        select new AuditFlag(
            Audit.Hazard, entry.Record.Shift, entry.Record.At, entry.Entry.Round, finding.Point,
            $"{word}, read: {Say.Sentence(finding.Text)}{Inside(span, entry.Record.At)}{Next(span, finding.Point!, entry.Record.At)} {Say.Day(span.Desk.Site, entry.Record.At)} {Say.Person(span.Desk.Site, entry.Record.By)} {Say.Ref(entry.Record.Seq)}", entry.Record.Seq);

    /// <summary>What the same head read next, and when it was first within its limits again.</summary>
    private static string Next(AuditSpan span, string tag, DateTimeOffset at)
    {
        if (span.Desk.Site.FindPoint(tag) is not { Choices.Count: 0 } point)
        {
            return "";
        }

        var later = span.Desk.Store.Series(tag, at.AddMilliseconds(1), span.End).Where(v => v.Value is not null).ToList();
        var clear = later.Find(v => !(v.Value >= (point.Limits.WatchHigh ?? point.Limits.UrgentHigh)));
        string Read(SeriesValue v) => $"{Say.Time(span.Desk.Site, v.At, at)}, {Say.Value(point, v.Value!.Value, v.Unit)} {Say.Ref(v.Seq)}";
        return later.Count == 0 ? " NOT READ since." : $" Read next {Read(later[0])}{(clear is null ? "; NOT within its limits since" : clear == later[0] ? "" : $"; within its limits {Read(clear)}")}.";
    }

    /// <summary>Who may have been inside anything then, by what was carried and told of it up to that time.</summary>
    private static string Inside(AuditSpan span, DateTimeOffset at)
    {
        var then = span.Records.Where(r => r.At <= at && r.Body is (Carry or CarryConfirmed or CarryClosed)).OrderBy(r => r.Seq).Aggregate(span.BeginState, (state, record) => state.Apply(record));
        return string.Concat(then.Carried.Where(i => i.MayBeInside).Select(i => $" Beside it then: {YetRecorded.Stands(span.Desk.Site, i)}."));
    }
}
