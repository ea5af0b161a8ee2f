using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>An upset declared with one key, from a time on; ended with the same key.</summary>
internal static class UpsetAsks
{
    public static string? WhyNot(Session session) => session.By is null ? "say first who is typing: i" : null;

    public static Next Open(Session session) => Next.Of(session.Open(session.Facts.Now.Upset is { } upset
        ? new AskPage($"The upset since {Say.Time(session.Site, upset.Began, session.Clock)} is over: since when?", ClockText.Accepted(session.Site, session.Clock) + "; empty means now", "", (asking, text, setting) =>
            At(asking, text, setting, at => Next.Of(asking, new WriteIt(new EndUpset(asking.By!, at)))))
        : new AskPage("An upset: since when?", ClockText.Accepted(session.Site, session.Clock) + "; empty means now", "", (asking, text, setting) =>
            At(asking, text, setting, at => Next.Of(asking.Back().Open(Why(at)))))));

    private static AskPage Why(DateTimeOffset since) => new(
        "What is upset?", "a few words", "", (asking, text, _) => Next.Of(asking, new WriteIt(new BeginUpset(asking.By!, since, text))));

    private static Next At(Session session, string text, Setting setting, Func<DateTimeOffset, Next> then) =>
        string.IsNullOrWhiteSpace(text) ? then(setting.Now) : RoundAsks.At(session, text, setting, then);
}
