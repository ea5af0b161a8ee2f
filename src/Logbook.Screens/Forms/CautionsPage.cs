using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>The site's cautions for what is about to be written: read before the last question, and in sight above it.</summary>
/// <param name="Then">What is asked when they were read.</param>
internal sealed record CautionsPage(IReadOnlyList<Caution> Cautions, Func<Session, Next> Then, int Scroll = 0) : Page, IScrolled
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "read", "Goes on to the last question; the caution stays above it.", (session, _, _) => ((CautionsPage)session.Top).Then(session), KeyName.Enter),
        Scrolling.Keys,
        UsualKeys.Back("One step back; nothing is written."),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    /// <summary>What is asked next, behind the cautions that the site has for one of these triggers.</summary>
    public static Next Before(Session session, IReadOnlyList<string> triggers, Func<Session, Next> then) =>
        session.Site.Cautions.Where(c => c.Triggers.Intersect(triggers, StringComparer.OrdinalIgnoreCase).Any()).ToList() is { Count: > 0 } cautions
            ? Next.Of(session.Open(new CautionsPage(cautions, then)))
            : then(session);

    public Page ScrolledTo(int line) => this with { Scroll = line };

    public override Layout Draw(Session session) => new([Line.Of(" CAUTION", Look.Hurts), Line.Empty], Lines(session), Scroll, Scroll, []) { Top = Scroll };

    private List<Line> Lines(Session session) =>
    [
        .. Cautions.SelectMany(c => Gutter.Lines("caution", Look.Hurts, $"{c.Hazard}: {Say.Sentence(c.Text)}", session.Width, rest: Look.Strong)
            .Concat(Gutter.Lines("wear", Look.Strong, Say.Sentence(c.Ppe), session.Width))
            .Concat(Gutter.Lines("first aid", Look.Strong, Say.Sentence(c.FirstAid), session.Width))
            .Concat(Gutter.Lines("source", Look.Faint, $"{c.Source}, revision {c.Revision}{(c.ApprovedBy is null ? ", DRAFT, not approved by the site" : "")}", session.Width))
            .Append(Line.Empty)),
    ];
}
