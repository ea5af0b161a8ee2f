namespace Logbook.Screens;

/// <summary>One of a few things, chosen by its digit, past the ninth by its letter, or with the arrows. Digit and letter only choose; Enter takes it.</summary>
/// <param name="Choices">Each with what it means; empty where its name says it.</param>
/// <param name="Chosen">Null before anything was chosen.</param>
/// <param name="Then">What becomes of it. It is handed the session with this page still on top, so that Esc leads back to it.</param>
internal sealed record PickPage(string Title, IReadOnlyList<(string Name, string Means)> Choices, int? Chosen, Func<Session, int, Setting, Next> Then) : Page
{
    private const int Digits = 9;

    private static readonly KeyTable Table = new(
        new KeyRow("1-9", "choose", "Chooses; another digit chooses another.", key => key.Digit is >= 1, (session, key, _) => Choose(session, key)),
        new KeyRow("letters", "", "Choose what stands below the ninth.", key => Place(key) >= Digits, (session, key, _) => Choose(session, key)) { Applies = s => Of(s).Choices.Count > Digits },
        KeyRow.Named("Enter", "take", "Takes what is chosen.", (session, _, setting) => Of(session).Then(session, Of(session).Chosen!.Value, setting), KeyName.Enter)
            with { WhyNot = s => Of(s).Chosen is null ? "choose by a digit or the arrows first" : null },
        KeyRow.Named("Up Down", "move", "Moves the mark.", (session, key, _) => Next.Of(session.Put(Of(session) with { Chosen = Moving.Move(Of(session).Chosen ?? -1, key, Of(session).Choices.Count, session.Leaf) })), Moving.Keys),
        UsualKeys.Back("Back; nothing is changed."),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var wide = Choices.Max(c => TextWidth.Of(c.Name)) + 2;
        return new Layout(
            [.. TextWidth.Wrap(Title, session.Width - 2).Select(l => Line.Of(" " + l, Look.Strong)), Line.Empty],
            [.. Choices.Select((c, i) => Line.Of($" {(i == Chosen ? ">" : " ")} {Mark(i)} {TextWidth.Fit(c.Name, wide)}{c.Means}", i == Chosen ? Look.Chosen : Look.Plain))],
            Chosen ?? 0, Chosen ?? 0, []);
    }

    private static PickPage Of(Session session) => (PickPage)session.Top;

    private static Next Choose(Session session, Keystroke key) => Next.Of(Place(key) is { } place && place < Of(session).Choices.Count
        ? session.Put(Of(session) with { Chosen = place })
        : session.Say($"there is no {key.Rune}; 1 to {Mark(Of(session).Choices.Count - 1)}"));

    private static char Mark(int place) => (char)(place < Digits ? '1' + place : 'a' + place - Digits);

    private static int? Place(Keystroke key) => key.Digit is >= 1 and var digit ? digit - 1
        : key.Name == KeyName.Written && key.Rune.Value is >= 'a' and <= 'z' and var letter ? letter - 'a' + Digits : null;
}
