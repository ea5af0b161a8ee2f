using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Which person: a code, or part of a name until one is left.</summary>
/// <param name="Then">What becomes of the person; the page below is on top again.</param>
internal sealed record WhoPage(string Title, string Text, int Selected, Func<Session, Person, Next> Then) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "take", "Takes the person under the mark.", (session, _, _) => Take(session, Of(session)), KeyName.Enter),
        new KeyRow("letters", "find", "Writes a code or a part of a name; the list gets shorter.", TextLine.IsWritten, Write),
        KeyRow.Named("Backspace", "", "Takes the last character back.", Write, KeyName.Backspace, KeyName.Delete),
        KeyRow.Named("Up Down", "move", "Moves the mark.", (session, key, _) => Move(session, Of(session), key), Moving.Keys),
        KeyRow.Named("Esc", "later", "Goes on without; nothing can be typed until somebody says who.", (session, _, _) => Next.Of(session.Back()), KeyName.Esc));

    public override KeyTable Keys => Table;

    public override bool IsWriting => Text.Length > 0;

    /// <summary>Who types from here on. What was begun of a handover is another person's and goes.</summary>
    public static WhoPage Typing() => new("Who is typing?", "", 0, (session, person) =>
        Next.Of((session with { By = person.Code, Giving = Giving.Nothing, Taking = Taking.Nothing }).Say($"{person.Name} is typing")));

    /// <summary>The one person with this code, or with these letters in the name; null when there is none or more than one.</summary>
    public static Person? Only(Site site, string text) => site.FindPerson(text)
        ?? (site.People.Where(p => p.Name.Contains(text, StringComparison.OrdinalIgnoreCase)).ToList() is [var one] ? one : null);

    public override Page? Pasted(string line) => this with { Text = TextLine.Joined(Text, line), Selected = 0 };

    public override Layout Draw(Session session)
    {
        var people = Matching(session, Text);
        var lines = people.Select((p, i) => Line.Of($" {(i == Selected ? ">" : " ")} {TextWidth.Fit(p.Code, 8)} {TextWidth.Fit(p.Name, 30)} {p.Role.ToString().ToLowerInvariant()}{(p.Crew is null ? "" : $", crew {p.Crew}")}", i == Selected ? Look.Chosen : Look.Plain));
        return new Layout(
            [Line.Of($" {Title}", Look.Strong), TextLine.Draw(Text, session.Width), Line.Empty],
            people.Count == 0 ? [Line.Of("   no person of this site; Backspace shows more")] : [.. lines], Selected, Selected, []);
    }

    private static WhoPage Of(Session session) => (WhoPage)session.Top;

    /// <summary>The crew that is here stands first.</summary>
    private static List<Person> Matching(Session session, string text) =>
    [
        .. session.Site.People.Where(p => p.Code.StartsWith(text, StringComparison.OrdinalIgnoreCase) || p.Name.Contains(text, StringComparison.OrdinalIgnoreCase))
            .OrderByDescending(p => p.Code.Equals(text, StringComparison.OrdinalIgnoreCase))
            .ThenByDescending(p => p.Crew is { } crew && session.Facts.Now.ShiftId.EndsWith("-" + crew, StringComparison.Ordinal)),
    ];

    private static Next Write(Session session, Keystroke key, Setting setting) => TextLine.Write(session, Of(session).Text, key, text => Of(session) with { Text = text, Selected = 0 });

    private static Next Move(Session session, WhoPage page, Keystroke key) =>
        Next.Of(session.Put(page with { Selected = Moving.Move(page.Selected, key, Matching(session, page.Text).Count, session.Leaf) }));

    private static Next Take(Session session, WhoPage page) => Matching(session, page.Text).ElementAtOrDefault(page.Selected) is { } person
        ? page.Then(session.Back(), person)
        : Next.Of(session.Say($"'{page.Text}' is nobody of this site"));
}
