using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A reason from one of the site's lists. The digit only chooses; Enter takes it, so that a wrong digit never lands in what comes next.</summary>
/// <param name="Digit">The chosen reason; null before the first digit.</param>
/// <param name="Then">What becomes of the reason; the page below is on top again.</param>
internal sealed record ReasonPage(string Title, IReadOnlyList<string> Reasons, int? Digit, Func<Session, string, Setting, Next> Then) : Page
{
    /// <summary>The same question about more at once: N again asks it.</summary>
    public ReasonPage? Wider { get; init; }

    private static readonly KeyTable Table = new(
        new KeyRow("1-9", "choose", "Chooses a reason; another digit chooses another.", key => key.Digit is not null, Choose),
        KeyRow.Named("Enter", "take", "Takes the reason.", (session, _, setting) => Take(session, Of(session).Reasons[Of(session).Digit!.Value - 1], (s, why) => Of(session).Then(s.Back(), why, setting)), KeyName.Enter)
            with { WhyNot = s => Of(s).Digit is null ? "choose a reason by its digit first" : null },
        KeyRow.Letter('N', "all of the round", "Asks it once of every open reading of the round.", (session, _) => Next.Of(session.Put(Of(session).Wider!)))
            with { WhyNot = s => Of(s).Wider is null ? "there is nothing more to ask it of" : null },
        UsualKeys.Back("Back; nothing is changed."),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session) => session.Under.Draw(session.Back()) with
    {
        Foot =
        [
            .. TextWidth.Wrap(Title, session.Width - 2).Select(l => Line.Of(" " + l, Look.Strong)),
            .. Reasons.Take(9).Select((reason, i) => Line.Of($"{(Digit == i + 1 ? " >" : "  ")} {i + 1} {reason}", Digit == i + 1 ? Look.Chosen : Look.Plain)),
        ],
    };

    /// <summary>Goes on with the reason; where it says nothing by itself a few words are asked for first.</summary>
    /// <param name="then">Gets the session with the page of the reasons on top.</param>
    public static Next Take(Session session, string reason, Func<Session, string, Next> then) => Reason.NeedsWords(reason)
        ? Next.Of(session.Open(AskPage.Words($"{FirstLetter.Large(reason)}: which?", "a few words: it says nothing by itself", (asking, words) => then(asking.Back(), $"{reason}: {words}"))))
        : then(session, reason);

    private static ReasonPage Of(Session session) => (ReasonPage)session.Top;

    private static Next Choose(Session session, Keystroke key, Setting setting)
    {
        var known = Of(session).Reasons.Take(9).Count();
        return Next.Of(key.Digit >= 1 && key.Digit <= known
            ? session.Put(Of(session) with { Digit = key.Digit })
            : session.Say($"there is no reason {key.Digit}; 1 to {known}"));
    }
}
