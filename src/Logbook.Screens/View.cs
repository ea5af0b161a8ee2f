namespace Logbook.Screens;

/// <summary>From the state to the screen.</summary>
internal static class View
{
    private const int Small = 16;
    private const int MostSaid = 3;

    public static Sheet Of(Session session)
    {
        var page = session.Top;
        return page.Draw(session).Fill(session.Width, session.Height, Bottom(session));
    }

    /// <summary>
    /// What stands at the foot of every page: what a holder who took the line without reading has still to read, the answer to the last key beside
    /// who holds the line, and the keys.
    /// </summary>
    public static IReadOnlyList<Line> Bottom(Session session) =>
    [
        .. Unread(session),
        .. Said(session),
        session.Top.Keys.Footer(session),
    ];

    /// <summary>
    /// The answer whole where there are lines for it: what a key was refused for is not to be guessed. A page that counts as seen gives it no line:
    /// the next key takes the answer away, and what stood behind it would count as shown.
    /// </summary>
    private static IEnumerable<Line> Said(Session session)
    {
        var lines = TextWidth.Wrap(session.Said.Text, session.Width - 2, session.Height < Small || session.Top is ReadPage ? 1 : MostSaid);
        Span holds = session.Top is NowPage ? new("") : Holds(session);
        return lines.Select((text, i) => Line.Of(new Span(" "), new Span(text, session.Said.Look)).With(i == lines.Count - 1 ? holds : new Span(""), session.Width));
    }

    private static IEnumerable<Line> Unread(Session session) => session.Facts.Line.Unread.IsEmpty || !session.Holds
        ? []
        : [Line.Of(TextWidth.Cut($" NOT READ YET: {string.Join(", ", session.Facts.Line.Unread)}; h on Now opens them", session.Width), Look.Hurts)];

    private static Span Holds(Session session) => session.Facts.Line.Holder is { } holder
        ? new Span($"holds the line: {Handover.Say.Person(session.Site, holder.Code)} ", Look.Faint)
        : new Span("NOBODY HOLDS THE LINE ", Look.Watch);
}
