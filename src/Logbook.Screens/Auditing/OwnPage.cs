using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>What the audit says of the walks of one person, shown to that person, or under the site's policy to a reader. It leaves the screen when nobody presses a key.</summary>
/// <param name="MayAnswer">The person's own: an answer opens it to the readers.</param>
internal sealed record OwnPage(IReadOnlyList<NoteLine> Own, bool MayAnswer, int Scroll) : Page, IScrolled
{
    private static readonly TimeSpan Leaves = TimeSpan.FromMinutes(2);

    private static readonly KeyTable Table = new(
        KeyRow.Letter('y', "answer", "Says that you have looked, and what you say to it; a record of the log. Nobody else sees this page before.", (session, _) => Next.Of(session.Open(Answer())))
            with { WhyNot = s => Of(s).MayAnswer ? null : "only the person answers" },
        Scrolling.Keys,
        UsualKeys.Back("Back; nothing of this page is kept."),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public static string? WhyNot(Session session) => session.Facts.OwnOff ?? Handing.WhyNot(session);

    public static Next Ask(Session session) => Next.Of(session.Open(new SignPage(new LookAtOwn(session.By!, session.By!, null), Secret.Empty, null)));

    public static Next AskOther(Session session) => Next.Of(session.Open(new WhoPage("Whose walks?", "", 0, (asking, person) => Next.Of(asking.Open(Why(person.Code))))));

    /// <summary>Who goes away leaves it to nobody who comes by.</summary>
    public static Session Left(Session session) => session.Top is OwnPage && session.Clock - session.LastKey > Leaves ? session.Back().Say("the page was left open: it is closed") : session;

    public Page ScrolledTo(int line) => this with { Scroll = line };

    public override Layout Draw(Session session) => new([Line.Of(" What the audit says of one person's walks: on this screen alone", Look.Strong), Line.Empty], Lines(session), Scroll, Scroll, []) { Top = Scroll };

    private List<Line> Lines(Session session) => [.. Own.SelectMany(l => Gutter.Lines(l.Label, Look.Strong, l.Text, session.Width))];

    private static AskPage Why(string of) => AskPage.Words("Why do you look?", "the person sees who looked, when and why", (asking, text) =>
        Next.Of(asking.Back().Open(new SignPage(new LookAtOwn(asking.By!, of, text), Secret.Empty, null)))) with { NoPin = true };

    private static AskPage Answer() => AskPage.Words("What do you say to it?", "in your own words; a record of the log, then the PIN", (asking, text) =>
        Next.Of(asking.Back().Open(new SignPage(new AnswerOwn(asking.By!, text), Secret.Empty, null)))) with { NoPin = true };

    private static OwnPage Of(Session session) => (OwnPage)session.Top;
}
