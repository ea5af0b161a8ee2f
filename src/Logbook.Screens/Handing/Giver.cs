using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>The holder's way from the declared sections to the signature, and what else a holder may do.</summary>
internal static class Giver
{
    private const int MostLines = 9;

    public static readonly IReadOnlyList<KeyRow> Keys =
    [
        KeyRow.Letter('b', "not yet", "Keeps the line: a critical step is running.", (session, _) => Next.Of(session.Open(
            new ReasonPage("Not yet, because", session.Site.Reasons.NotYet, null, (below, why, _) => ReceiverKeys.Step(below, new StayOn(below.By!, why)))))),
        KeyRow.Letter('e', "going on", "The same person goes on over the shift change: no acceptance, but what can hurt is read first (o).", (session, _) => Next.Of(session.Open(
            new AskPage("Why do you go on?", "the same person over a shift change", "", (asking, text, _) => ReceiverKeys.Step(asking, new GoOnHolding(asking.By!, text))) { NoPin = true }))),
        KeyRow.Letter('o', "what can hurt", "Opens the page of what can hurt.", (session, _) => Next.Of(session, new ShowPage(session.By!, "hazards"))),
        KeyRow.Letter('z', "leave it", "You have to go and nobody is there to take the line.", (session, _) => Next.Of(session.Open(
            new ReasonPage("You leave the line to nobody, because", session.Site.Reasons.Relief, null, (below, why, _) => ReceiverKeys.Step(below, new LeaveLine(below.By!, why)))))),
        .. ReceiverKeys.Shared,
    ];

    public static LinesPage IfThen() => new(
        "If ... then ...: what to do if something open turns", "\"if the flow falls under 240, then stop the lime: site procedure\"", "", MostLines,
        s => s.Giving.IfThen,
        (s, lines) => s with { Giving = s.Giving with { IfThen = lines } },
        s => s.Giving.IfThen.IsEmpty && s.Facts.Now.Hazards.Count > 0 ? "something that can hurt is open: one line at least" : null,
        s => Next.Of(s.Open(Words())));

    private static LinesPage Words() => new(
        "Own words, if there is more to say", "the one who comes sees them after giving theirs", "", MostLines,
        s => s.Giving.Words,
        (s, lines) => s with { Giving = s.Giving with { Words = lines } },
        _ => null,
        s => Next.Of(s.Open(new SignPage(Prepare(s), Secret.Empty, null))));

    /// <summary>Sections that a record has changed since they were declared: such a declaration is not signed. Empty for another step.</summary>
    public static IReadOnlyList<string> Outdated(Session session, HandStep step) => step is PrepareNote ? session.Giving.Outdated(session.Facts) : [];

    /// <summary>Back to the sections, the mark on the first of these.</summary>
    public static Session Anew(Session session, IReadOnlyList<string> outdated)
    {
        var at = session.Pages.FindLastIndex(p => p is GivePage);
        return (session with { Pages = session.Pages.RemoveRange(at, session.Pages.Count - at).Add((GivePage)session.Pages[at] with { Selected = HazardSections.All.ToList().IndexOf(outdated[0]) }) })
            .Say($"not signed: look again at {string.Join(", ", outdated)} and declare it anew; your lines stay", Look.Watch);
    }

    private static PrepareNote Prepare(Session session) => new(new PrepareRequest(
        session.By!, session.Giving.Typed, session.Giving.IfThen, session.Giving.Words) { Anew = true, Said = session.Giving.Said }); // the lines of the first time stand among them
}
