namespace Logbook.Screens;

/// <summary>One line of text, asked for at the bottom of the page it belongs to.</summary>
/// <param name="Help">What is accepted.</param>
/// <param name="Then">What becomes of the text. It is handed the session with this page still on top, so that it can refuse.</param>
internal sealed record AskPage(string Title, string Help, string Text, Func<Session, string, Setting, Next> Then) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "take", "Takes the text.", (session, _, setting) => Take(session, Of(session), setting), KeyName.Enter),
        new KeyRow("text", "", "Writes.", TextLine.IsWritten, Write),
        KeyRow.Named("Backspace", "", "Takes the last character back.", Write, KeyName.Backspace),
        KeyRow.Named("Delete", "empty", "Empties the line.", Write, KeyName.Delete),
        KeyRow.Named("Esc", "back", "Back without it.", (session, _, _) => Next.Of(Dropped(session, Of(session))), KeyName.Esc));

    /// <summary>Where Esc leads: one step back, unless the page below is nothing without the answer.</summary>
    public Func<Session, Session> Drop { get; init; } = session => session.Back();

    /// <summary>A PIN is asked for after it, or stands near: what looks like one is not taken for words.</summary>
    public bool NoPin { get; init; }

    public override KeyTable Keys => Table;

    public override bool IsWriting => Text.Length > 0;

    public override Page? Pasted(string line) => this with { Text = TextLine.Joined(Text, line) };

    public override Layout Draw(Session session) => session.Under.Draw(session.Back()) with
    {
        Foot =
        [
            .. TextWidth.Wrap(Title, session.Width - 2).Select(l => Line.Of(" " + l, Look.Strong)), TextLine.Draw(Text, session.Width),
            .. TextWidth.Wrap(Help, session.Width - 4).Select(l => Line.Of("   " + l, Look.Faint)),
        ],
    };

    /// <summary>A question that is nothing without an answer.</summary>
    public static AskPage Words(string title, string help, Func<Session, string, Next> then) => new(title, help, "", (asking, text, _) =>
        string.IsNullOrWhiteSpace(text) ? Next.Of(asking.Say("a few words are needed here")) : then(asking, text.Trim()));

    /// <summary>Words that were typed do not go without a word. What may be a PIN is not shown again.</summary>
    private static Session Dropped(Session session, AskPage page) =>
        string.IsNullOrWhiteSpace(page.Text) || page.NoPin ? page.Drop(session) : page.Drop(session).Say($"not taken: {page.Text.Trim()}");

    private static AskPage Of(Session session) => (AskPage)session.Top;

    private static Next Take(Session session, AskPage page, Setting setting) =>
        TextLine.WhyNot(page.Text) is { } broken ? Next.Of(session.Say(broken))
        : page.NoPin && Secret.Early(page.Text) is { } early ? Next.Of(session.Put(page with { Text = "" }).Say(early))
        : page.Then(session, page.Text, setting);

    private static Next Write(Session session, Keystroke key, Setting setting) => TextLine.Write(session, Of(session).Text, key, text => Of(session) with { Text = text });
}
