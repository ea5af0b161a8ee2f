namespace Logbook.Screens;

/// <summary>
/// The keys of a round: a value begins with a digit, and until its Enter everything that is written belongs to it, so that a
/// letter hit by mistake is seen and refused. In an empty field, and after a refusal, letters are commands; one that asks for
/// more is never refused, for the digits that follow it must not land in the field.
/// </summary>
internal static class RoundKeys
{
    public static readonly KeyTable Table = new(
        new KeyRow("0-9 .,-", "", "Writes into the field. Nothing takes a value but Enter. Letters command only in an empty field or after a refusal; in a value they are refused, and a digit then begins it anew.", IsOfField, Write),
        new KeyRow("letters", "", "Belong to the value that is being typed, which is refused with them.", TextLine.IsWritten, Write) { Applies = s => Page(s).IsTyping },
        KeyRow.Named("Enter", "next", "Takes the value and goes to the next open row; on an empty field leaves the row open. When every row is answered it saves the round.",
            (session, _, setting) => Entering.Enter(session, Page(session), setting), KeyName.Enter),
        KeyRow.Letter('k', "keep it", "Keeps a value beyond what is possible, with the reason why it stands.", (session, _) => Next.Of(session.Open(RoundAsks.Keep(session))))
            with { WhyNot = s => Page(s).MayKeep ? null : "only for a value that was refused because it is beyond what is possible" },
        KeyRow.Letter('n', "not taken", "Says why the reading was not taken: a digit, then Enter.", (session, _) => Next.Of(session.Open(NotTaken(session)))),
        KeyRow.Letter('m', "remark", "Words to this reading.", (session, _) => Next.Of(session.Open(RoundAsks.Remark(session)))),
        KeyRow.Named("Esc", "save", "Saves what is typed as one entry and goes back.", (session, _, _) => Leaving.Leave(session, Page(session)), KeyName.Esc) with { Applies = s => s.Draft is not null, WhyNot = Typed },
        KeyRow.Named("Esc", "leave", "Goes back, when nothing is typed that is not saved.", (session, _, _) => Leaving.Leave(session, Page(session)), KeyName.Esc) with { Applies = s => s.Draft is null, WhyNot = Typed },
        KeyRow.Letter('t', "read at", "When this reading was taken, if not now.", (session, _) => Next.Of(session.Open(RoundAsks.ReadAt(session)))),
        KeyRow.Letter('s', "second", "A second reading of the same point, beside the first; of one that is saved already an entry of its own.", (session, _) => RoundAsks.Second(session)),
        KeyRow.Letter('N', "rest not taken", "Says once why none of the open readings of this area was taken; N again: of the whole round.", (session, _) => Next.Of(session.Open(RestNotTaken(session)))),
        KeyRow.Letter('c', "carried", "What is carried at this place, looked at: still so, changed, not seen; behind the last row all on the way that was not looked at.", (session, _) => Next.Of(session.Open(CarriedInRound.Here(session, Page(session))))),
        KeyRow.Letter('d', "upset", "Declares an upset from a time: rounds but safety points become one line. Ends it when one lasts.", (session, _) => UpsetAsks.Open(session)),
        KeyRow.Letter('p', "from paper", "Typed from a sheet: asks once when the walk began and ended; readings count from then.", (session, _) => Next.Of(session.Open(RoundAsks.FromPaper(session))))
            with { WhyNot = s => Page(s).WalkEnd is null ? null : "the times of the walk are given already" },
        KeyRow.Letter('w', "why", "What is said of this row, in full, with the sums behind it.", (session, _) => Next.Of(session.Open(Why(Page(session)))))
            with { WhyNot = s => Why(Page(s)).Findings.Count > 0 ? null : "nothing stands out in this row" },
        KeyRow.Letter('g', "graph", "This point over time: of a row that is answered, so that the value before does not come first.", (session, _) => GraphPage.Open(session, Page(session).Row.Point.Tag))
            with { WhyNot = s => Page(s).Row.Answered ? null : "type the new value first; then the ones before it" },
        KeyRow.Named("Backspace", "", "Takes the last character back.", Write, KeyName.Backspace) with { WhyNot = s => Page(s).Field.Length > 0 ? null : "the field is empty" + TakingBack.Hint(Page(s)) },
        KeyRow.Named("Delete", "empty", "Empties the field.", Write, KeyName.Delete) with { Applies = s => Page(s).Field.Length > 0 },
        KeyRow.Named("Delete", "take back", "Takes back the value of this row that is typed and not saved: the row is open again.", (session, _, _) => TakingBack.Take(session, Page(session)), KeyName.Delete)
            with { WhyNot = s => Page(s).Field.Length > 0 ? "the field is emptied first" : TakingBack.WhyNot(Page(s)) },
        KeyRow.Named("Up Down", "", "Moves along the rows; Page Up, Page Down, Home, End, Tab too. Down passes over what is not asked for, as Enter does; Up reaches it.", Move, [.. Moving.Keys, KeyName.Tab, KeyName.BackTab]) with { WhyNot = Typed },
        UsualKeys.Find,
        UsualKeys.Help);

    private static RoundPage Page(Session session) => (RoundPage)session.Top;

    private static Next Write(Session session, Keystroke key, Setting setting) => Typing.Write(session, Page(session), key, setting);

    private static bool IsOfField(Keystroke key) => key.Digit is not null || key.Is('.') || key.Is(',') || key.Is('-');

    private static string? Typed(Session session) => Page(session) is not { Field: { Length: > 0 } field } page ? null
        : page.Refused ? $"{field} was refused: a digit begins it anew, Delete empties the field"
        : $"{field} is not taken yet: Enter takes it, Delete empties the field";

    private static ReasonPage NotTaken(Session session)
    {
        var point = Page(session).Row.Point;
        return new ReasonPage($"{point.Tag} {point.Description}: not taken, because", session.Site.Reasons.NotTaken, null, (below, why, setting) =>
            Entering.Take(below, Page(below), Page(below).Line(below, "-", setting.Now) with { Why = why, Second = null }, setting));
    }

    private static ReasonPage RestNotTaken(Session session)
    {
        var area = Page(session).Row.Point.Area;
        return OpenNotTaken(session, AreaWords.Of(area), row => row.Point.Area == area) with { Wider = OpenNotTaken(session, Page(session).Round.Title, _ => true) };
    }

    private static ReasonPage OpenNotTaken(Session session, string where, Func<RoundRow, bool> asked)
    {
        var open = Enumerable.Range(0, Page(session).Rows.Count).Where(i => Page(session).Rows[i] is { Answered: false, Rests: null } row && asked(row)).ToList();
        return new ReasonPage($"{where}: {Handover.Say.Count(open.Count, "open reading")} not taken, because", session.Site.Reasons.NotTaken, null, (below, why, setting) =>
            Entering.TakeAll(below, open, why, setting));
    }

    private static FindingsPage Why(RoundPage page)
    {
        var row = page.Live.Findings.Count > 0 || page.Row.Answered || page.Answered is not { } last ? page.Row : page.Rows[last];
        return new FindingsPage($"{row.Point.Tag} {row.Point.Description}", page.Live.Findings.Count > 0 ? page.Live.Findings : row.Check.Findings, row.Saved?.Seq, 0);
    }

    private static Next Move(Session session, Keystroke key, Setting setting)
    {
        var page = Page(session);
        // Down goes the way of a sheet: values typed in a row must not slide into what stands still.
        return Going.To(session, page, key.Name is KeyName.Down or KeyName.Tab ? page.NextBelow : Moving.Move(page.Current, key, page.Rows.Count, session.Leaf));
    }
}
