namespace Logbook.Screens;

/// <summary>From the state to the screen.</summary>
internal static class View
{
    public static Sheet Of(Session session)
    {
        var page = session.Top;
        return page.Draw(session).Fill(session.Width, session.Height, [Line.Of(new Span(" "), session.Said), page.Keys.Footer(session)]);
    }
}
