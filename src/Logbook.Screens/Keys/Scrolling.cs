namespace Logbook.Screens;

/// <summary>A page that is read from its top: the arrows move its lines, not a mark.</summary>
internal interface IScrolled
{
    /// <summary>The first line that is shown.</summary>
    int Scroll { get; }

    Page ScrolledTo(int line);
}

/// <summary>The arrows and the page keys of a page that is read from its top.</summary>
internal static class Scrolling
{
    public static readonly KeyRow Keys = KeyRow.Named("Up Down", "scroll", "Scrolls; Page Up, Page Down, Home and End too.", (session, key, _) => Move(session, key), Moving.Keys);

    // What stands in the first and the last line of a longer page says how much lies beyond it.
    private const int Marks = 2;

    private static Next Move(Session session, Keystroke key)
    {
        var (page, layout) = ((IScrolled)session.Top, session.Top.Draw(session));
        var room = Reader.Room(session, layout.Head, layout.Foot);
        var last = Math.Max(0, layout.Body.Count - room);
        return Next.Of(session.Put(page.ScrolledTo(Moving.Move(Math.Min(page.Scroll, last), key, last + 1, room - Marks))));
    }
}
