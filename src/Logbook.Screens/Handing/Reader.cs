namespace Logbook.Screens;

/// <summary>Text that is read from its top to its end, a screenful at a time: nothing of it can be jumped over.</summary>
internal static class Reader
{
    /// <summary>Lines that the page's body has room for.</summary>
    public static int Room(Session session, IReadOnlyList<Line> head, IReadOnlyList<Line> foot) =>
        Math.Max(1, session.Height - head.Count - foot.Count - View.Bottom(session).Count);

    public static bool AtEnd(int top, int room, int count) => top + room >= count;

    public static int Move(int top, Keystroke key, int room, int count)
    {
        var to = key.Name switch
        {
            KeyName.Up => top - 1,
            KeyName.Down => top + 1,
            KeyName.PageUp => top - Math.Max(1, room - 1),
            KeyName.Home => 0,
            _ => top + Math.Max(1, room - 1),
        };
        return Math.Clamp(to, 0, Math.Max(0, count - room));
    }
}
