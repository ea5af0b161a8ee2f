namespace Logbook.Screens;

/// <summary>What becomes of a line that was asked for.</summary>
internal static class Answering
{
    public static (string Title, string Help) Words(Session session, Ask ask) => ask switch
    {
        Ask.Remark => ($"Remark on {Tag(session)}", "kept with the reading; empty takes it away"),
        Ask.ReadAt => ($"When was {Tag(session)} read?", ClockText.Accepted),
        Ask.Second => ($"Second reading of {Tag(session)}", "kept beside the first"),
        Ask.Keep => ($"Why does {((RoundPage)session.Under).Field} at {Tag(session)} stand?", "a few words, kept with the value"),
        Ask.WalkStart => ("When did the walk begin?", ClockText.Accepted),
        Ask.WalkEnd => ("When did it end? Readings count from then, unless t says otherwise", ClockText.Accepted),
        Ask.Filter => ("Show only records with these words", "words, people, areas, kinds; empty shows all"),
        _ => throw new InvalidOperationException($"nothing is asked: {ask}"),
    };

    public static Next Take(Session session, AskPage asked, Setting setting)
    {
        var below = session.Back();
        return asked.Ask switch
        {
            Ask.Remark => RowAnswers.Remark(below, asked.Text),
            Ask.ReadAt => At(session, asked, setting, at => RowAnswers.ReadAt(below, at, setting)),
            Ask.Second => RowAnswers.Second(below, session, asked.Text, setting),
            Ask.Keep => string.IsNullOrWhiteSpace(asked.Text) ? Next.Of(session.Say("without a reason the value does not stand")) : RowAnswers.Keep(below, asked.Text, setting),
            Ask.WalkStart => At(session, asked, setting, at => Next.Of(Walk(below, at, null).Open(new AskPage(Ask.WalkEnd, "")))),
            Ask.WalkEnd => At(session, asked, setting, at => Ended(session, below, at)),
            Ask.Filter => LogReading.Filter(below, asked.Text),
            _ => throw new InvalidOperationException($"nothing is asked: {asked.Ask}"),
        };
    }

    /// <summary>One step back. A walk without its times is not typed: there the step leads out of the round.</summary>
    public static Next Drop(Session session, AskPage asked) => Next.Of(asked.Ask is Ask.WalkStart or Ask.WalkEnd ? session.Back().Back() : session.Back());

    private static Next At(Session session, AskPage asked, Setting setting, Func<DateTimeOffset, Next> then) =>
        ClockText.Read(asked.Text, session.Site, setting.Now, out var mistake) is { } at ? then(at) : Next.Of(session.Say(mistake));

    private static Next Ended(Session session, Session below, DateTimeOffset at) =>
        at < ((RoundPage)below.Top).WalkStart ? Next.Of(session.Say("the walk would end before it began")) : Next.Of(Walk(below, ((RoundPage)below.Top).WalkStart, at));

    private static Session Walk(Session session, DateTimeOffset? start, DateTimeOffset? end) =>
        session.Put((RoundPage)session.Top with { WalkStart = start, WalkEnd = end });

    private static string Tag(Session session) => ((RoundPage)session.Under).Row.Point.Tag;
}
