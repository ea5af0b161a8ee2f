using System.Collections.Immutable;
using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>The receiver's way: pages, a question, own words, PIN. And the reading of what an emergency holder left unread.</summary>
internal static class Receiving
{
    private const int MostLines = 3;

    public static Next Shown(Session session, PageShown shown)
    {
        var page = new ReadPage(shown.Page, shown.UpTo, [.. shown.Missing.Where(m => m != shown.Page.Name)], 0, Again: !shown.Missing.Contains(shown.Page.Name, StringComparer.Ordinal));
        return Next.Of(Below(session).Open(page));
    }

    /// <summary>Nothing is unread: the holder goes back; the receiver is asked what was not answered yet.</summary>
    public static Next Questions(Session session, AllRead read)
    {
        var below = Below(session);
        if (session.Holds)
        {
            return Next.Of(below.Say("all of it is read"));
        }

        // Above the page that was read last: Esc leads one step back, to that.
        var above = session.Top is ReadPage ? session : below;
        above = above with { Taking = above.Taking.AskedAlso(read.Questions) with { Told = [.. read.Told] } };
        var (asked, answered) = (above.Taking.Asked, above.Taking.Answers.Count);
        return Next.Of(above.Open(answered == asked.Count ? OwnWords(above) : new QuestionPage(asked, answered, null)));
    }

    /// <summary>Why the line cannot be taken over now, whoever reads; null when it can.</summary>
    public static string? WhyNotYet(Session session) => (session.Facts.Line, session.Taking.Unattended) switch
    {
        (_, not null) => null,
        ({ NotYet: { } held, Holder: { } holder }, _) => $"NOT YET, since {Say.Time(session.Site, held.At, session.Clock)}: {Say.Visible(held.Why)}. {Say.Person(session.Site, holder.Code)} prepares anew when it is over; read it meanwhile",
        ({ Prepared: null, Holder: { } holder }, _) => $"{Say.Person(session.Site, holder.Code)} has prepared nothing yet: it can only be read meanwhile",
        ({ Prepared: null }, _) => "NOBODY HOLDS THE LINE and nothing is prepared: o says why you take it alone",
        _ => null,
    };

    public static LinesPage OwnWords(Session session) => new(
        "I check first ...", "one to three lines in your own words; \"nothing beyond the list\" is one", "", MostLines,
        s => s.Taking.First,
        (s, lines) => s with { Taking = s.Taking with { First = lines } },
        s => s.Taking.First.IsEmpty ? "one line at least" : WhyNotYet(s),
        s => Next.Of(s.Open(new SignPage(Accept(s), Secret.Empty, null))))
    {
        Reservation = ReceiverKeys.Reservation,
    };

    private static TakeOver Accept(Session session) => new(new AcceptRequest(session.By!, session.Taking.First, session.Taking.Answers)
    {
        Reservation = session.Taking.Reservation,
        Unattended = session.Taking.Unattended,
    });

    /// <summary>The page that reading began from.</summary>
    private static Session Below(Session session) => session.Top is ReadPage or QuestionPage or SignPage or LinesPage ? Below(session.Back()) : session;
}

/// <summary>A question about what the hazards page says. A wrong answer opens that page anew, to be read to its end; that it was wrong is kept, not which choice was taken.</summary>
/// <param name="At">Which question is asked.</param>
/// <param name="Choice">The digit that was typed; null before it.</param>
internal sealed record QuestionPage(ImmutableList<HazardQuestion> Questions, int At, int? Choice) : Page
{
    private static readonly KeyTable Table = new(
        [
            new KeyRow("1-3", "choose", "Chooses an answer.", key => key.Digit is >= 1 and <= 3, (session, key, _) => Next.Of(session.Put(Of(session) with { Choice = key.Digit }))),
            KeyRow.Named("Enter", "take", "Takes the answer.", (session, _, _) => Take(session), KeyName.Enter) with { WhyNot = s => Of(s).Choice is null ? "choose by a digit first" : null },
            KeyRow.Named("Page Up", "pages again", "Opens the page again; the question is then drawn anew.", (session, _, _) => Next.Of(session, new ShowPage(session.By!, "hazards")), KeyName.PageUp),
            .. ReceiverKeys.Rows,
            UsualKeys.Back("One step back. What was read stays read."),
            UsualKeys.Help,
        ]);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var asked = Questions[At];
        var count = Questions.Count == 1 ? "One question" : FormattableString.Invariant($"Question {At + 1} of {Questions.Count}");
        return new Layout(
            [Line.Of($" {count} about what can hurt", Look.Strong), Line.Empty, .. TextWidth.Wrap(asked.Text, session.Width - 2).Select(l => Line.Of(" " + l)), Line.Empty],
            [.. asked.Choices.SelectMany((text, i) => Gutter.Lines($"{(Choice == i + 1 ? ">" : " ")} {i + 1}", Look.Strong, text, session.Width, rest: Choice == i + 1 ? Look.Chosen : Look.Plain))],
            0, 0, ReceiverKeys.Said(session));
    }

    private static QuestionPage Of(Session session) => (QuestionPage)session.Top;

    private static Next Take(Session session)
    {
        var page = Of(session);
        if (page.Choice != page.Questions[page.At].Right)
        {
            session = session with { Taking = session.Taking with { Asked = [], Answers = [] } };
            return Next.Of(session.Say("not what the page says: read it again; this is kept, another thing is asked"), new MissQuestion(session.By!, page.Questions[page.At]));
        }

        session = session with { Taking = session.Taking with { Answers = session.Taking.Answers.Add(page.Choice!.Value) } };
        return Next.Of(page.At + 1 < page.Questions.Count
            ? session.Put(page with { At = page.At + 1, Choice = null })
            : session.Back().Open(Receiving.OwnWords(session)));
    }
}
