using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Who is typing: a code, or part of a name until one person is left.</summary>
internal sealed record WhoPage(string Text, int Selected) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "take", "Takes the person under the mark.", (session, _, _) => Take(session, (WhoPage)session.Top), KeyName.Enter),
        new KeyRow("letters", "find", "Writes a code or a part of a name; the list gets shorter.", key => key.Name == KeyName.Written && key.Rune.Value >= ' ', Write),
        KeyRow.Named("Backspace", "", "Takes the last character back.", Write, KeyName.Backspace, KeyName.Delete),
        KeyRow.Named("Up Down", "move", "Moves the mark.", (session, key, _) => Move(session, (WhoPage)session.Top, key), Moving.Keys),
        KeyRow.Named("Esc", "later", "Goes on without; nothing can be typed until somebody says who.", (session, _, _) => Next.Of(session.Back()), KeyName.Esc));

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var people = Matching(session, Text);
        var lines = people.Select((p, i) => Line.Of($" {(i == Selected ? ">" : " ")} {TextWidth.Fit(p.Code, 8)} {TextWidth.Fit(p.Name, 30)} {p.Role.ToString().ToLowerInvariant()}{(p.Crew is null ? "" : $", crew {p.Crew}")}", i == Selected ? Look.Chosen : Look.Plain));
        return new Layout(
            [Line.Of(" Who is typing?", Look.Strong), Line.Of(new Span(" > "), new Span(Text + "_", Look.Field)), Line.Empty],
            people.Count == 0 ? [Line.Of("   no person of this site; Backspace shows more")] : [.. lines], Selected, Selected, []);
    }

    private static List<Person> Matching(Session session, string text) =>
    [
        .. session.Site.People.Where(p => p.Code.StartsWith(text, StringComparison.OrdinalIgnoreCase) || p.Name.Contains(text, StringComparison.OrdinalIgnoreCase))
            .OrderByDescending(p => p.Code.Equals(text, StringComparison.OrdinalIgnoreCase)),
    ];

    private static Next Write(Session session, Keystroke key, Setting setting)
    {
        var page = (WhoPage)session.Top;
        return Next.Of(session.Put(new WhoPage(key.Name == KeyName.Written ? page.Text + key.Rune : AskPage.Shorter(page.Text), 0)));
    }

    private static Next Move(Session session, WhoPage page, Keystroke key) =>
        Next.Of(session.Put(page with { Selected = Moving.Move(page.Selected, key, Matching(session, page.Text).Count, session.Leaf) }));

    private static Next Take(Session session, WhoPage page) => Matching(session, page.Text).ElementAtOrDefault(page.Selected) is { } person
        ? Next.Of((session.Back() with { By = person.Code }).Say($"{person.Name} is typing"))
        : Next.Of(session.Say($"'{page.Text}' is nobody of this site"));
}
