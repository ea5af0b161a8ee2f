using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>Every record of the shift in its order, one line each.</summary>
internal static class EachRecord
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of(
        "log",
        "MINUTE BY MINUTE",
        facts.Records.Where(r => r.Body is not HandoverSeen).OrderBy(r => r.At).ThenBy(r => r.Seq).Select(r => new NoteLine(
            facts.Time(r.At), $"{Say.Sentence(LogLine.Of(facts.Desk, r).Words)} {Say.Person(facts.Site, r.By)} {Say.Ref(r.Seq)}")));
}
