using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>One record in full.</summary>
internal sealed record RecordPage(JournalRecord Record, int Scroll) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Up Down", "scroll", "Scrolls.", (session, key, _) => Next.Of(session.Put(Of(session) with { Scroll = Moving.Move(Of(session).Scroll, key, RecordLines.Body(session, Of(session).Record).Count, session.Leaf) })), Moving.Keys),
        UsualKeys.Find,
        UsualKeys.Back(),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session) => new([.. RecordLines.Head(session, Record)], RecordLines.Body(session, Record), Scroll, Scroll, []);

    private static RecordPage Of(Session session) => (RecordPage)session.Top;
}
