using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What people wrote in the shift, in their own words, in order; what tells of an injury, or of a thing that can hurt, stands there.</summary>
internal static class Remarks
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of("remarks", "WRITTEN IN THE SHIFT", facts.Records.OrderBy(r => r.At).ThenBy(r => r.Seq).SelectMany(r => Lines(facts, r)));

    private static IEnumerable<NoteLine> Lines(ShiftFacts facts, JournalRecord record) => (record.Body switch
    {
        Remark when !InjuryWords.TellsOfInjury(record) && !facts.Hazards.Any(h => h.Remarks.Contains(record.Seq)) => [LogLine.Of(facts.Desk, record).Words],
        Entry entry => Words(entry),
        // Of a finding of this shift it stands beside that.
        FindingAnswered answer when !facts.Records.Any(r => r.Seq == answer.Seq) => [LogLine.Of(facts.Desk, record).Words],
        _ => [],
    }).Select(words => new NoteLine(facts.Time(record.At), $"{Say.Person(facts.Site, record.By)}: {words} {Say.Ref(record.Seq)}"));

    private static IEnumerable<string> Words(Entry entry) =>
        entry.Readings.Where(r => !string.IsNullOrWhiteSpace(r.Remark)).Select(r => $"{Say.Visible(r.Point)}: {Say.Visible(r.Remark!)}")
            .Concat(string.IsNullOrWhiteSpace(entry.Remark) || InjuryWords.Tell(entry.Remark) ? [] : [Say.Visible(entry.Remark)]);
}
