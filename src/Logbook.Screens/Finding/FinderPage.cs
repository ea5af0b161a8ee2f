namespace Logbook.Screens;

/// <summary>Anything by a part of its name: a point, equipment, a key, a record.</summary>
/// <param name="Search">What the text finds.</param>
internal sealed record FinderPage(string Title, string Text, int Selected, Func<Session, string, IReadOnlyList<Found>> Search) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "open", "Opens what is under the mark.", (session, _, setting) => Open(session, setting), KeyName.Enter),
        new KeyRow("letters", "find", "Writes a part of a name; several words must all be there.", TextLine.IsWritten, Write),
        KeyRow.Named("Backspace", "", "Takes the last character back; Delete all of it.", Write, KeyName.Backspace, KeyName.Delete),
        KeyRow.Named("Up Down", "move", "Moves the mark.", Move, Moving.Keys),
        UsualKeys.Back());

    public override KeyTable Keys => Table;

    public override bool IsWriting => Text.Length > 0;

    public static FinderPage ForAll() => new("Find a point, equipment, a key or a record", "", 0, Found.All);

    public static FinderPage ForPoint(string title, Func<Session, string, Next> then) => new(title, "", 0, (session, text) => Found.OfPoints(session, text, then));

    public static FinderPage ForEquipment(string title, Func<Session, string, Next> then) => new(title, "", 0, (session, text) => Found.OfEquipment(session, text, areas: false, then));

    /// <summary>Equipment, or an area of the line.</summary>
    public static FinderPage ForPlace(string title, Func<Session, string, Next> then) => new(title, "", 0, (session, text) => Found.OfEquipment(session, text, areas: true, then));

    public override Page? Pasted(string line) => this with { Text = TextLine.Joined(Text, line), Selected = 0 };

    public override Layout Draw(Session session)
    {
        var found = Search(session, Text);
        var name = Math.Clamp(found.Select(f => TextWidth.Of(f.Name)).DefaultIfEmpty(0).Max(), 8, Math.Max(8, session.Width / 3));
        return new Layout(
            [Line.Of($" {Title}", Look.Strong), TextLine.Draw(Text, session.Width), Line.Empty],
            found.Count == 0
                ? [Line.Of(Text.Length == 0 ? "   part of a name, or a record's number" : "   nothing has these words", Look.Faint)]
                : [.. found.Select((f, i) => Line.Of(
                    new Span($" {(i == Selected ? ">" : " ")} {TextWidth.Fit(f.What, 10)} ", i == Selected ? Look.Chosen : Look.Faint),
                    new Span(TextWidth.Fit(f.Name, name) + " ", i == Selected ? Look.Chosen : Look.Strong), new Span(f.Detail, i == Selected ? Look.Chosen : Look.Plain)))],
            Selected, Selected, []);
    }

    private static FinderPage Of(Session session) => (FinderPage)session.Top;

    private static Next Write(Session session, Keystroke key, Setting setting) => TextLine.Write(session, Of(session).Text, key, text => Of(session) with { Text = text, Selected = 0 });

    private static Next Move(Session session, Keystroke key, Setting setting) =>
        Next.Of(session.Put(Of(session) with { Selected = Moving.Move(Of(session).Selected, key, Of(session).Search(session, Of(session).Text).Count, session.Leaf) }));

    private static Next Open(Session session, Setting setting)
    {
        var page = Of(session);
        if (page.Search(session, page.Text).ElementAtOrDefault(page.Selected) is not { } found)
        {
            return Next.Of(session.Say("nothing is under the mark"));
        }

        var below = session.Back();
        return found.WhyNot(below) is { } why ? Next.Of(session.Say($"{found.Name}: {why}")) : found.Open(below, setting);
    }
}
