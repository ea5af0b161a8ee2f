namespace Logbook.Screens;

/// <summary>The keys that mean the same on every page.</summary>
internal static class UsualKeys
{
    public static KeyRow Back(string help = "One step back.") =>
        KeyRow.Named("Esc", "back", help, (session, _, _) => Next.Of(session.Back()), KeyName.Esc);

    public static readonly KeyRow Help =
        KeyRow.Letter('?', "keys", "Shows the keys of this page and what the marks mean.", (session, _) => Next.Of(session.Open(new HelpPage(session.Top))));
}
