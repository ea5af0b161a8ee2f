using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>One record in full.</summary>
/// <param name="Words">The same in one line of words.</param>
internal sealed record RecordPage(JournalRecord Record, string Words, int Scroll) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Up Down", "scroll", "Scrolls.", (session, key, _) => Next.Of(session.Put(Of(session) with { Scroll = Moving.Move(Of(session).Scroll, key, RecordLines.Body(session, Of(session)).Count, session.Leaf) })), Moving.Keys),
        KeyRow.Letter(']', "related", "All records that belong to this one.", (session, _) => RelatedPage.Ask(session, Of(session).Record.Seq)),
        KeyRow.Letter('c', "correct", "Puts a reading of this entry right; both values stay.", (session, _) => RecordAsks.Correct(session)) with { WhyNot = RecordAsks.NoReadings },
        SecondReading.Key(session => (Of(session).Record.Seq, Of(session).Record.Body is Entry entry ? entry.Findings : [])),
        KeyRow.Letter('m', "remark", "A remark on this record.", (session, _) => Next.Of(session.Open(RecordAsks.Remark(Of(session).Record.Seq)))) with { WhyNot = RecordAsks.NobodyTypes },
        UsualKeys.Back(),
        UsualKeys.Find,
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session) => new([.. RecordLines.Head(session, Record)], RecordLines.Body(session, this), Scroll, Scroll, []);

    private static RecordPage Of(Session session) => (RecordPage)session.Top;
}
