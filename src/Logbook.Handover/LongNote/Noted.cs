using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What was only noted: findings that ask for nothing, each kind at each point once.</summary>
internal static class Noted
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of(
        "noted",
        "ALSO NOTED",
        from found in facts.Entries.SelectMany(e => e.Entry.Findings.Select(f => (e.Record, Finding: f)))
        where found.Finding.Level == Level.Note
        group found by (found.Finding.Point, found.Finding.Code) into kind
        orderby kind.First().Record.Seq
        let last = kind.Last()
        select new NoteLine(
            Say.Visible(kind.Key.Point ?? "line"),
            $"{Say.Sentence(last.Finding.Text)} {Say.Count(kind.Count(), "time")}, last {facts.Time(last.Record.At)} {Say.Ref(last.Record.Seq)}"));
}
