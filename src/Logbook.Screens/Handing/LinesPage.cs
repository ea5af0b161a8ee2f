using System.Collections.Immutable;

namespace Logbook.Screens;

/// <summary>A few lines in own words: Enter takes one, Enter on an empty line goes on, Backspace on an empty line takes the last one back.</summary>
/// <param name="Most">So many lines are the most; the last one goes on by itself.</param>
/// <param name="Lines">Where the lines stand.</param>
/// <param name="With">Where they are put.</param>
/// <param name="WhyNot">Why it cannot go on; null when it can.</param>
internal sealed record LinesPage(
    string Title, string Help, string Text, int Most, Func<Session, ImmutableList<string>> Lines, Func<Session, ImmutableList<string>, Session> With,
    Func<Session, string?> WhyNot, Func<Session, Next> Then) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "take", "Takes the line; on an empty line goes on.", (session, _, _) => Take(session), KeyName.Enter),
        new KeyRow("text", "", "Writes.", TextLine.IsWritten, Write),
        KeyRow.Named("Backspace", "", "Takes the last character back; on an empty line the last line.", Write, KeyName.Backspace),
        KeyRow.Named("Delete", "empty", "Empties the line.", Write, KeyName.Delete),
        KeyRow.Named("Tab", "reservation", "Takes the line over, but not without saying this.", (session, _, _) => Next.Of(session.Open(Of(session).Reservation!(session))), KeyName.Tab) with { Applies = s => Of(s).Reservation is not null },
        UsualKeys.Back("Back; the lines stay."));

    /// <summary>Opens what the one who takes over does not do so without saying; null where the line is not taken over. A letter would begin a line.</summary>
    public Func<Session, AskPage>? Reservation { get; init; }

    public override KeyTable Keys => Table;

    public override bool IsWriting => Text.Length > 0;

    public override Page? Pasted(string line) => this with { Text = TextLine.Joined(Text, line) };

    public override Layout Draw(Session session)
    {
        var lines = Lines(session);
        return new Layout(
            [.. TextWidth.Wrap(Title, session.Width - 2).Select(l => Line.Of(" " + l, Look.Strong)), Line.Of($" {Help}", Look.Faint), Line.Empty],
            [
                .. lines.SelectMany((l, i) => Gutter.Lines(FormattableString.Invariant($"{i + 1}"), Look.Strong, l, session.Width)),
                TextLine.Draw(Text, session.Width),
                Line.Of(Text.Length > 0 || WhyNot(session) is not null ? "" : "   Enter goes on", Look.Faint),
            ],
            lines.Count, lines.Count + 1, ReceiverKeys.Said(session));
    }

    private static LinesPage Of(Session session) => (LinesPage)session.Top;

    private static Next Write(Session session, Keystroke key, Setting setting)
    {
        var (page, lines) = (Of(session), Of(session).Lines(session));
        return key.Name == KeyName.Backspace && page.Text.Length == 0 && !lines.IsEmpty
            ? Next.Of(page.With(session, lines.RemoveAt(lines.Count - 1)).Put(page with { Text = lines[^1] }))
            : TextLine.Write(session, page.Text, key, text => page with { Text = text });
    }

    private static Next Take(Session session)
    {
        var page = Of(session);
        if (TextLine.WhyNot(page.Text) is { } broken)
        {
            return Next.Of(session.Say(broken));
        }

        if (Secret.Early(page.Text) is { } early)
        {
            return Next.Of(session.Put(page with { Text = "" }).Say(early));
        }

        if (!string.IsNullOrWhiteSpace(page.Text))
        {
            session = page.With(session, page.Lines(session).Add(page.Text.Trim())).Put(page with { Text = "" });
            if (page.Lines(session).Count < page.Most)
            {
                return Next.Of(session);
            }
        }

        return page.WhyNot(session) is { } why ? Next.Of(session.Say(why)) : page.Then(session);
    }
}
