using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>The site's cautions for what was just opened: read before anybody goes there.</summary>
internal sealed record CautionsPage(IReadOnlyList<Caution> Cautions, int Scroll) : Page, IScrolled
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "read", "Goes on.", (session, _, _) => Next.Of(session.Back()), KeyName.Enter),
        Scrolling.Keys,
        UsualKeys.Back(),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    /// <summary>Over what stood there, when the site has a caution for one of these triggers.</summary>
    public static Session Over(Session session, IReadOnlyList<string> triggers) =>
        session.Site.Cautions.Where(c => c.Triggers.Intersect(triggers, StringComparer.OrdinalIgnoreCase).Any()).ToList() is { Count: > 0 } cautions
            ? session.Open(new CautionsPage(cautions, 0))
            : session;

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

    private static CautionsPage Of(Session session) => (CautionsPage)session.Top;
}
