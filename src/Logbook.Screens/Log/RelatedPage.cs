using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>A record and all that belongs to it, in order.</summary>
internal sealed record RelatedPage(long Of, IReadOnlyList<LogLine> Lines, int Selected) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "open", "Opens the record in full.", (session, _, _) => Next.Of(session, new ReadRecord(Page(session).Lines[Page(session).Selected].Seq)), KeyName.Enter),
        KeyRow.Named("Up Down", "", "Moves the mark.", (session, key, _) => Next.Of(session.Put(Page(session) with { Selected = Moving.Move(Page(session).Selected, key, Page(session).Lines.Count, session.Leaf) })), Moving.Keys),
        UsualKeys.Back(),
        UsualKeys.Find,
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public static Next Ask(Session session, long seq) => Next.Of((session with { Looking = seq }).Say($"looking for what belongs to {Say.Ref(seq)} ..."), new ReadRelated(seq));

    public static Session Open(Session session, RelatedRead read) => session.Looking != read.Seq ? session : Found(session with { Looking = null, Said = new Span("") }, read);

    private static Session Found(Session session, RelatedRead read) => read.Lines.Count < 2
        ? session.Say($"nothing else belongs to {Say.Ref(read.Seq)}")
        : session.Open(new RelatedPage(read.Seq, read.Lines, Math.Max(0, read.Lines.ToList().FindIndex(l => l.Seq == read.Seq))));

    public override Layout Draw(Session session)
    {
        var rows = Lines.Select((l, i) => LogDrawing.Record(session, l, i == Selected).ToList()).ToList();
        var from = rows.Take(Selected).Sum(r => r.Count);
        return new Layout(
            [Line.Of($" What belongs to {Say.Ref(Of)}, in order", Look.Strong), LogDrawing.Columns(session)],
            [.. rows.SelectMany(r => r)], from, from + rows[Selected].Count - 1, []);
    }

    private static RelatedPage Page(Session session) => (RelatedPage)session.Top;
}
