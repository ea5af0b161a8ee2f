using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>One record in full.</summary>
/// <param name="Words">The same in one line of words.</param>
/// <param name="Signed">Of a step of the handover, what was signed.</param>
internal sealed record RecordPage(JournalRecord Record, string Words, IReadOnlyList<NoteSection> Signed, int Scroll) : Page, IScrolled
{
    private static readonly KeyTable Table = new(
        Scrolling.Keys,
        KeyRow.Letter(']', "related", "All records that belong to this one.", (session, _) => RelatedPage.Ask(session, Of(session).Record.Seq)),
        KeyRow.Letter('c', "correct", "Puts a reading of this entry right; both values stay.", (session, _) => RecordAsks.Correct(session)) with { WhyNot = RecordAsks.NoReadings },
        SecondReading.Key(session => (Of(session).Record.Seq, Of(session).Record.Body is Entry entry ? entry.Findings : [])),
        KeyRow.Letter('m', "remark", "A remark on this record.", (session, _) => Next.Of(session.Open(RecordAsks.Remark(Of(session).Record.Seq)))) with { WhyNot = RecordAsks.NobodyTypes },
        UsualKeys.Back(),
        UsualKeys.Find,
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public Page ScrolledTo(int line) => this with { Scroll = line };

    public override Layout Draw(Session session) => new([.. RecordLines.Head(session, Record)], RecordLines.Body(session, this), Scroll, Scroll, []) { Top = Scroll };

    private static RecordPage Of(Session session) => (RecordPage)session.Top;
}
