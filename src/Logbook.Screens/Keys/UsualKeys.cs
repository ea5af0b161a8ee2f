namespace Logbook.Screens;

/// <summary>The keys that mean the same on every page.</summary>
internal static class UsualKeys
{
    public static KeyRow Back(string help = "One step back.") =>
        KeyRow.Named("Esc", "back", help, (session, _, _) => Next.Of(session.Back()), KeyName.Esc);

    public static readonly KeyRow Find =
        KeyRow.Letter('/', "find", "Any point, equipment, key or record by a part of its name.", (session, _) => Next.Of(session.Open(FinderPage.ForAll())));

    /// <summary>Taken before any page: it stands here for the help.</summary>
    public static readonly KeyRow Emergency = new("!", "", "Emergency relief, from every page: takes the line at once, without a PIN.", _ => false, (session, _, _) => Next.Of(session));

    public static readonly KeyRow Help =
        KeyRow.Letter('?', "keys", "Shows the keys of this page and what the marks mean.", (session, _) => Next.Of(session.Open(new HelpPage(session.Top))));
}
