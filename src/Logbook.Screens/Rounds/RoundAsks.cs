namespace Logbook.Screens;

/// <summary>What a round asks for in words: about the present row, and about the walk.</summary>
internal static class RoundAsks
{
    public static AskPage Remark(Session session) => IfSaved(session) ?? new(
        $"Remark on {Tag(session)}", "kept with the reading; empty takes it away", Page(session).Row.Line?.Remark ?? "",
        (asking, text, _) => RowAnswers.Remark(asking.Back(), text));

    public static AskPage ReadAt(Session session) => IfSaved(session) ?? new(
        $"When was {Tag(session)} read?", ClockText.Accepted(session.Site, session.Clock), "",
        (asking, text, setting) => At(asking, text, setting, at => RowAnswers.ReadAt(asking.Back(), at, setting)));

    /// <summary>Of the present row; where that is still open, of the one answered last: there the value was just read.</summary>
    public static Next Second(Session session)
    {
        var page = Page(session);
        var row = page.Row.Answered || page.Answered is not { } last ? page.Current : last;
        return page.Rows[row] is { Saved: { Text: not "-" } saved } first && first.Line?.Text is null
            ? SecondReading.OfSaved(session, page.Round, saved.Seq, page.Rows[row].Point.Tag)
            : Next.Of(session.Open(new AskPage($"Second reading of {page.Rows[row].Point.Tag}", "kept beside the first", "",
                (asking, text, setting) => RowAnswers.Second(asking.Back(), asking, row, text, setting))));
    }

    /// <summary>A question that takes nothing and says what to do: it stays open, so that digits typed behind its key land in no field.</summary>
    public static AskPage Nothing(string why, string instead) => new(why, instead, "", (asking, _, _) => Next.Of(asking.Say("nothing is taken here: Esc leads back")));

    public static AskPage Keep(Session session) => new(
        $"Why does {Page(session).Field} at {Tag(session)} stand?", "a few words, kept with the value", "",
        (asking, text, setting) => string.IsNullOrWhiteSpace(text) ? Next.Of(asking.Say("without a reason the value does not stand")) : RowAnswers.Keep(asking.Back(), text, setting));

    /// <summary>A walk without its times is not typed: Esc leads out of the round.</summary>
    public static AskPage WalkStart(Session session) => WalkStart(session, asking => asking.Back().Back());

    /// <summary>A round that was written on a sheet: Esc leads back to typing it as it is read.</summary>
    public static AskPage FromPaper(Session session) => WalkStart(session, asking => asking.Back());

    private static AskPage WalkStart(Session session, Func<Session, Session> drop) => new(
        "When did the walk begin?", ClockText.Accepted(session.Site, session.Clock), "",
        (asking, text, setting) => At(asking, text, setting, at => Next.Of(asking.Back().Open(WalkEnd(asking, at, drop)))))
    {
        Drop = drop,
    };

    private static AskPage WalkEnd(Session session, DateTimeOffset began, Func<Session, Session> drop) => new(
        $"The walk began {Handover.Say.Time(session.Site, began, session.Clock)}. When did it end? Readings count from then, unless t says otherwise", ClockText.Accepted(session.Site, session.Clock), "",
        (asking, text, setting) => At(asking, text, setting, at => at < began
            ? Next.Of(asking.Say("the walk would end before it began"))
            : Next.Of(asking.Back().Put((RoundPage)asking.Under with { WalkStart = began, WalkEnd = at }))))
    {
        Drop = drop,
    };

    internal static Next At(Session session, string text, Setting setting, Func<DateTimeOffset, Next> then) =>
        ClockText.Read(text, session.Site, setting.Now, out var mistake) is { } at ? then(at) : Next.Of(session.Say(mistake));

    /// <summary>What is in the journal has its time and its words: the round adds none to it. Null for a row that is typed here.</summary>
    private static AskPage? IfSaved(Session session) => Page(session).Row is { Saved: { } saved } row && row.Line?.Text is null
        ? Nothing($"{Tag(session)} is saved already {Handover.Say.Ref(saved.Seq)}: nothing can be added here", "Esc, then in the log (l): c puts it right, m adds words, as when it was read")
        : null;

    private static RoundPage Page(Session session) => (RoundPage)session.Top;

    private static string Tag(Session session) => Page(session).Row.Point.Tag;
}
