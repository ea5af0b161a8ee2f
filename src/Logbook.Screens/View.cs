namespace Logbook.Screens;

/// <summary>From the state to the screen.</summary>
internal static class View
{
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
        Line.Of(new Span(" "), session.Said).With(session.Top is NowPage ? new Span("") : Holds(session), session.Width),
        session.Top.Keys.Footer(session),
    ];

    private static IEnumerable<Line> Unread(Session session) => session.Facts.Line.Unread.IsEmpty || !session.Holds
        ? []
        : [Line.Of(TextWidth.Cut($" NOT READ YET: {string.Join(", ", session.Facts.Line.Unread)}; h on Now opens them", session.Width), Look.Hurts)];

    private static Span Holds(Session session) => session.Facts.Line.Holder is { } holder
        ? new Span($"holds the line: {Handover.Say.Person(session.Site, holder.Code)} ", Look.Faint)
        : new Span("NOBODY HOLDS THE LINE ", Look.Watch);
}
