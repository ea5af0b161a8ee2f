using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>Into the handover, and what follows from a step that was taken.</summary>
internal static class Handing
{
    public static string? WhyNot(Session session) => session.By is null ? "say first who is typing: i" : null;

    /// <summary>The holder declares, everybody else reads. Who took the line in an emergency first reads what was left unread.</summary>
    public static Next Open(Session session) => session.Holds && session.Facts.Line.Unread.IsEmpty
        ? Next.Of((session with { Giving = session.Giving.After(session.Facts.Line.Prepared ?? session.Facts.Line.Dropped, session.By!) }).Open(new GivePage(0)), new ReadOver())
        : Next.Of(session, new ReadOn(session.By!));

    public static Next Taken(Session session, StepTaken taken)
    {
        if (taken.Handed.Own is { } own)
        {
            return Next.Of(session.Back().Open(new OwnPage(own, taken.Step is LookAtOwn { Why: null }, 0)));
        }

        if (taken.Handed.Record is not { } record)
        {
            // The PIN page stays for another try; what else asked stays too.
            return Next.Of(session.Say(HandoverRunner.Words(taken.Handed), Look.Watch), taken.Handed is { Refused: not null, Unsigned: false } && taken.Step is TakeOver ? [new ReadOn(taken.Step.By)] : []);
        }

        var said = $"{taken.Step.Done} {Say.Ref(record.Seq)}";
        return taken.Step switch
        {
            TakeOver or EmergencyRelief or ShortRelief => Next.Of(Holding(session, taken.Step.By).Say(said)),
            AskOther => Next.Of(session.Back().Open(Aloud(session, record.Seq)).Say(said)),
            CloseItem when taken.Handed.Beside is { } beside => Next.Of(session.Back().Say(beside, Look.Hurts)),
            Countersign or CloseItem => Next.Of(session.Back().Say(said)),
            CountOut count => Next.Of(CarriedPage.Looked(session.Back(), count.Item.Id).Say(said)),
            ReplyTo or CallAnswered => Next.Of(session.Back().Say(said)),
            AnswerOwn => Next.Of(session.Back().Back().Say(said)),
            _ => Next.Of((session with { Giving = Giving.Nothing }).Home().Say(said)),
        };
    }

    private static Session Holding(Session session, string by) => session.Home() with { By = by, Taking = Taking.Nothing, Giving = Giving.Nothing };

    private static AloudPage Aloud(Session session, long question) => new(question, session.Facts.Line.Holder?.Code);
}

/// <summary>A question was asked: it may be answered aloud at once.</summary>
/// <param name="From">Who is asked; null when nobody holds the line.</param>
internal sealed record AloudPage(long Question, string? From) : Page
{
    private static readonly KeyTable Table = new(
        new KeyRow("1", "answered aloud", "Writes down what was said.", key => key.Digit == 1, (session, _, _) => Next.Of(session.Back().Open(Said((AloudPage)session.Top))))
            with { WhyNot = s => ((AloudPage)s.Top).From is null ? "nobody holds the line who could answer" : null },
        KeyRow.Named("Enter", "stays open", "The question stays open until it is answered.", (session, _, _) => Next.Of(session.Back()), KeyName.Enter, KeyName.Esc));

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session) => session.Under.Draw(session.Back()) with { Foot = [Line.Of(" Asked. Was it answered aloud? 1 writes it down, Enter leaves it open", Look.Strong)] };

    private static AskPage Said(AloudPage page) => new("What was said?", "written down as said aloud", "", (asking, text, _) =>
        ReceiverKeys.Step(asking, new ReplyTo(asking.By!, page.Question, text, page.From)));
}
