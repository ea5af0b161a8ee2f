using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>What the one who takes over may do on every page of it.</summary>
internal static class ReceiverKeys
{
    public static readonly IReadOnlyList<KeyRow> Rows =
    [
        KeyRow.Letter('u', "doubt", "Asks the one who hands over; the answer may be said aloud and written down here.", (session, _) => Next.Of(session.Open(Doubt()))),
        KeyRow.Letter('v', "reservation", "Takes the line over, but not without saying this.", (session, _) => Next.Of(session.Open(Reservation(session)))) with { WhyNot = NotForHolder },
        KeyRow.Letter('x', "refuse", "Does not take over: says why; the line stays where it is and a supervisor has to sign.", (session, _) => Next.Of(session.Open(Refuse()))) with { WhyNot = s => NotForHolder(s) ?? Staying.WhyNotRefuse(s.Site, s.Facts.Line, s.By!) },
        KeyRow.Letter('f', "for a while", "Takes the line for less than an hour and back: one line and the PIN.", (session, _) => Next.Of(session.Open(ForAWhile()))) with { WhyNot = NoShortRelief },
        KeyRow.Letter('o', "alone", "Nobody is there to hand over: says why; a supervisor has to sign.", (session, _) => Next.Of(session.Open(Alone(session)))) with { WhyNot = NotForHolder },
        KeyRow.Letter('c', "called", "While nobody holds the line: who answered the call, and what was said.", (session, _) => Next.Of(session.Open(Called())))
            with { WhyNot = s => s.Facts.Line.Holder is null ? null : "somebody holds the line" },
        .. Shared,
    ];

    /// <summary>What the holder and everybody else may do.</summary>
    public static IReadOnlyList<KeyRow> Shared =>
    [
        KeyRow.Letter('y', "answer", "Answers the oldest open question.", (session, _) => Next.Of(session.Open(Answer(session))))
            with { WhyNot = s => s.Facts.Line.Questions.IsEmpty ? "no question is open" : null },
        KeyRow.Letter('p', "countersign", "A supervisor signs for a refused, unattended or emergency handover: what was found, and the PIN.", (session, _) => Next.Of(session.Open(new WaitingPage(0))))
            with { WhyNot = WaitingPage.WhyNot },
    ];

    /// <summary>What the own signature will say beside the acceptance: it stays in sight on every page until it is signed or taken away.</summary>
    public static IReadOnlyList<Line> Said(Session session) =>
    [
        .. session.Taking.Reservation is { } words ? Gutter.Lines("reserving", Look.Watch, words, session.Width, 2) : [],
        .. session.Taking.Unattended is { } why ? Gutter.Lines("alone", Look.Watch, why, session.Width, 2) : [],
    ];

    private static string? NotForHolder(Session session) => session.Holds ? "you hold the line already" : null;

    /// <summary>Said at once: nobody writes what is watched and is refused behind the PIN.</summary>
    private static string? NoShortRelief(Session session) => NotForHolder(session)
        ?? (session.Facts.Line.Holder is null ? "nobody holds the line: o takes it over alone"
            : session.Facts.Line.NotYet is { } held ? $"not yet, {Say.Visible(held.Why)}; ! takes the line in an emergency"
            : Relieving.IsOver(session.Facts.Line.Holder, session.Clock) ? $"the relief of {Say.Time(session.Site, session.Facts.Line.Holder.ReliefBegan!.Value, session.Clock)} has lasted an hour: take over in full"
            : null);

    private static AskPage Doubt() => AskPage.Words("What do you doubt?", "a question to the one who hands over", (asking, text) => Step(asking, new AskOther(asking.By!, text))) with { NoPin = true };

    private static AskPage Refuse() => AskPage.Words("Why do you not take over?", "the line stays where it is", (asking, text) => Step(asking, new RefuseLine(asking.By!, text))) with { NoPin = true };

    internal static AskPage Reservation(Session session) => new(
        "You take over, but not without saying", "printed on the note; empty takes it away", session.Taking.Reservation ?? "",
        (asking, text, _) => Next.Of((SignedAnew(asking.Back(), Blank(text)) with { Taking = asking.Taking with { Reservation = Blank(text) } })
            .Say(Blank(text) is null ? "no reservation" : "your reservation is taken: it stands with your signature; v changes it")))
    {
        NoPin = true,
    };

    /// <summary>What is about to be signed has the reservation in it.</summary>
    private static Session SignedAnew(Session session, string? words) => session.Top is SignPage { Step: TakeOver step } page
        ? session.Put(page with { Step = new TakeOver(step.Request with { Reservation = words }) })
        : session;

    private static AskPage Alone(Session session) => new(
        "Why is nobody there to hand over?", "you take the line alone; empty takes it away", session.Taking.Unattended ?? "",
        (asking, text, _) => Next.Of((asking.Back() with { Taking = asking.Taking with { Unattended = Blank(text) } })
            .Say(Blank(text) is null ? "you do not take the line alone" : "you take it alone: it stands with your signature; o changes it")))
    {
        NoPin = true,
    };

    private static AskPage ForAWhile() => AskPage.Words(
        "For less than an hour: what do you watch?", "one line, then the PIN",
        (asking, text) => Next.Of(asking.Back().Open(new SignPage(new ShortRelief(asking.By!, text), Secret.Empty, null)))) with { NoPin = true };

    private static WhoPage Called() => new("Who answered the call?", "", 0, (session, person) => Next.Of(session.Open(new AskPage(
        $"What did {person.Name} say?", "written down with the name", "", (asking, text, _) => Step(asking, new CallAnswered(asking.By!, person.Code, text))))));

    private static AskPage Answer(Session session)
    {
        var asked = session.Facts.Line.Questions[0];
        return new($"{Say.Person(session.Site, asked.By)} asks: {asked.Text}", "your answer", "", (asking, text, _) => Step(asking, new ReplyTo(asking.By!, asked.Seq, text, null)));
    }

    internal static Next Step(Session session, HandStep step) => Next.Of(session, new Hand(step, Secret.Empty, null));

    private static string? Blank(string text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
