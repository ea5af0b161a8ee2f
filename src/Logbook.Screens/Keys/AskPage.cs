namespace Logbook.Screens;

/// <summary>What a line of text is asked for.</summary>
internal enum Ask { Remark, ReadAt, Second, Keep, WalkStart, WalkEnd, Filter }

/// <summary>One line of text, asked for at the bottom of the page it belongs to.</summary>
internal sealed record AskPage(Ask Ask, string Text) : Page
{
    private const int Longest = 400;

    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "take", "Takes the text.", (session, _, setting) => Answering.Take(session, (AskPage)session.Top, setting), KeyName.Enter),
        new KeyRow("text", "", "Writes.", key => key.Name == KeyName.Written && key.Rune.Value >= ' ', Write),
        KeyRow.Named("Backspace", "", "Takes the last character back.", Write, KeyName.Backspace),
        KeyRow.Named("Delete", "empty", "Empties the line.", Write, KeyName.Delete),
        KeyRow.Named("Esc", "back", "Back without it.", (session, _, _) => Answering.Drop(session, (AskPage)session.Top), KeyName.Esc));

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var (title, help) = Answering.Words(session, Ask);
        return session.Under.Draw(session) with
        {
            Foot =
            [
                Line.Of($" {title}", Look.Strong),
                Line.Of(new Span(" > "), new Span(TextWidth.Tail(Text, Math.Max(2, session.Width - 5)) + "_", Look.Field)),
                Line.Of($"   {help}", Look.Faint),
            ],
        };
    }

    private static Next Write(Session session, Keystroke key, Setting setting)
    {
        var page = (AskPage)session.Top;
        var text = key.Name switch
        {
            KeyName.Delete => "",
            KeyName.Backspace => Shorter(page.Text),
            _ => page.Text + key.Rune,
        };
        return Next.Of(text.Length > Longest ? session.Say($"{Longest} characters are the most") : session.Put(page with { Text = text }));
    }

    internal static string Shorter(string text) => text.Length == 0 ? "" : text[..^(char.IsLowSurrogate(text[^1]) && text.Length > 1 ? 2 : 1)];
}
