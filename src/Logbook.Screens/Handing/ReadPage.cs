using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>A page of the handover as its reader sees it. It counts as seen when its last line was shown.</summary>
/// <param name="UpTo">The last record that the page could tell of.</param>
/// <param name="Left">What is to be read after this page.</param>
/// <param name="Top">The first line that is shown.</param>
/// <param name="Again">It was read before.</param>
internal sealed record ReadPage(HandoverPage Page, long UpTo, IReadOnlyList<string> Left, int Top, bool Again) : Page
{
    internal static readonly KeyTable Table = new(
        [
            KeyRow.Named("Enter", "go on", "Shows what follows; at the end of a page the next one. A page that was shown in full counts as seen.", (session, key, _) => GoOn(session, key), KeyName.Enter),
            KeyRow.Named("Up Down", "", "Scrolls; Page Up and Page Down too.", (session, key, _) => Scroll(session, key), KeyName.Up, KeyName.Down, KeyName.PageUp, KeyName.PageDown, KeyName.Home),
            .. ReceiverKeys.Rows,
            UsualKeys.Back("Back to Now. What was read stays read."),
            UsualKeys.Help,
        ]);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var (head, body, foot) = (Head(session), Body(session), Foot(session));
        var room = Reader.Room(session, head, foot);
        // On a screen that has grown since less lies above.
        return new Layout(head, [.. body.Skip(Math.Min(Top, Math.Max(0, body.Count - room))).Take(room)], 0, 0, foot);
    }

    private IReadOnlyList<Line> Head(Session session) =>
        [Line.Of($" Handover: {Page.Title}", Look.Strong), Line.Of($" {session.Facts.Now.InCharge}", session.Facts.Now.Held ? Look.Plain : Look.Watch), .. Waits(session)];

    /// <summary>What keeps it from being taken over stands there before it is read for that.</summary>
    private static IEnumerable<Line> Waits(Session session) => session.Holds || Receiving.WhyNotYet(session) is not { } why
        ? []
        : TextWidth.Wrap(why, session.Width - 2).Select(l => Line.Of(" " + l, Look.Watch));

    private List<Line> Body(Session session) =>
    [
        .. Page.Sections.SelectMany(section => Enumerable.Concat(
            [Line.Of(new Span($" {section.Title}", Hurts(section) ? Look.Hurts : Look.Strong), new Span($"  {section.Beside}", Look.Faint))],
            section.Lines.SelectMany(l => Gutter.Lines(l.Label, Look.Strong, l.Text, session.Width)))),
    ];

    private IReadOnlyList<Line> Foot(Session session)
    {
        var but = ReceiverKeys.Said(session);
        var room = Reader.Room(session, Head(session), [Line.Empty, .. but]);
        var count = Body(session).Count;
        var text = !Reader.AtEnd(Top, room, count) ? $"{Say.Count(count - Top - room, "line")} below: Enter shows them"
            : Left.Count > 0 ? $"shown in full; then: {string.Join(", ", Left)}"
            : "shown in full";
        text += Again && !session.Holds ? "; read before: Esc, then h goes on after it" : "";
        return [Line.Of($" {text}", Look.Faint), .. but];
    }

    private static bool Hurts(NoteSection section) => section.Id is "can-hurt" or "since-hurts" or "take-longer";

    private static ReadPage Of(Session session) => (ReadPage)session.Top;

    private (int Room, int Count) Size(Session session) => (Reader.Room(session, Head(session), Foot(session)), Body(session).Count);

    private static Next Scroll(Session session, Keystroke key)
    {
        var (room, count) = Of(session).Size(session);
        return Next.Of(session.Put(Of(session) with { Top = Reader.Move(Of(session).Top, key, room, count) }));
    }

    private static Next GoOn(Session session, Keystroke key)
    {
        var page = Of(session);
        var (room, count) = page.Size(session);
        return Reader.AtEnd(page.Top, room, count)
            ? Next.Of(session, new SeePage(session.By!, page.Page.Name, page.UpTo), new ReadOn(session.By!))
            : Scroll(session, key);
    }
}
