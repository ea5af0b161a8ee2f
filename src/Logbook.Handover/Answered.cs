using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What was done about a finding: it stands beside the finding wherever that is told.</summary>
/// <param name="At">When it was said.</param>
/// <param name="Seq">The record that the finding stands in.</param>
/// <param name="Entry">The entry that it is of: another one where a correction found it.</param>
internal sealed record Answered(DateTimeOffset At, string By, string Text, long Seq, long Entry, Finding Finding)
{
    /// <summary>The answers in <paramref name="records"/> and those of what stands, oldest first.</summary>
    public static IReadOnlyList<Answered> Of(Desk desk, State state, IEnumerable<JournalRecord> records)
    {
        var standing = state.Findings.Values.SelectMany(f => f).Select(f => f.Answer).OfType<FindingAnswer>().SelectMany(a => desk.Store.Read(a.Seq).Take(1));
        return [.. records.Where(r => r.Body is FindingAnswered).Concat(standing).DistinctBy(r => r.Seq).OrderBy(r => r.Seq).Select(r => Of(desk, r))];
    }

    /// <summary>The answer to a finding that stands; null while nobody has said.</summary>
    public static Answered? Of(Desk desk, OpenFinding open) => open.Answer is { } answer ? Of(desk, desk.Store.Read(answer.Seq).First()) : null;

    public bool IsTo(long seq, Finding finding) => (seq == Seq || seq == Entry) && finding.Point == Finding.Point && finding.Code == Finding.Code;

    /// <summary><c>answered 02:12 Operator one: lime cut, engineer told.</c></summary>
    public string Words(Site site, DateTimeOffset near) => $"answered {Say.Time(site, At, near)} {Say.Person(site, By)}: {Say.Sentence(Text)}";

    private static Answered Of(Desk desk, JournalRecord record)
    {
        var answer = (FindingAnswered)record.Body;
        var (entry, findings) = desk.Store.Read(answer.Seq).First().Body switch
        {
            Correction correction => (correction.Target, correction.Findings),
            Entry of => (answer.Seq, of.Findings),
            _ => (answer.Seq, []),
        };
        return new Answered(record.At, record.By, answer.Text, answer.Seq, entry, findings[answer.Number - 1]);
    }
}
