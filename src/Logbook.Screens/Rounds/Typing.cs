namespace Logbook.Screens;

/// <summary>Writing in the round's field; the check speaks at each key.</summary>
internal static class Typing
{
    private const int Longest = 16;

    public static Next Write(Session session, RoundPage page, Keystroke key, Setting setting)
    {
        var field = key.Name switch
        {
            KeyName.Backspace => TextLine.Shorter(page.Field),
            KeyName.Delete => "",
            _ when page.Refused || (page.Row.Point.Choices.Count > 0 && !page.AtEnd) => key.Rune.ToString(),
            _ => page.Field + key.Rune,
        };
        // Another digit is another answer, but what was typed for the row above must not turn into one unseen.
        session = page is { AtEnd: false, Refused: false, Field.Length: > 0 } && page.Row.Point.Choices.Count > 0 && key.Name == KeyName.Written && field != page.Field
            ? session.Say($"{page.Row.Point.Tag} was {page.Field}, now {field}: one digit is one answer", Look.Watch) : session;
        return field.Length > Longest
            ? Next.Of(session.Say("longer than any instrument shows"))
            : Next.Of(session.Put(In(session, page, field, setting)));
    }

    /// <summary>The page with this text in its field.</summary>
    public static RoundPage In(Session session, RoundPage page, string field, Setting setting)
    {
        page = page with { Field = field, Refused = false, MayKeep = false };
        return page with { Live = Judging.Live(session, page, setting) };
    }
}
