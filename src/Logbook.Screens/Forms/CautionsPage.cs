using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>What is about to be written that cannot be true beside a hazard, and the site's cautions for it: read before the last question, and in sight above it.</summary>
/// <param name="Yet">The two things that would stand beside each other; null when nothing contradicts it.</param>
/// <param name="Then">What is asked when they were read.</param>
internal sealed record CautionsPage(string? Yet, IReadOnlyList<Caution> Cautions, Func<Session, Next> Then, int Scroll = 0) : Page, IScrolled
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "read on", "Letters were typed on this page, which takes none: says so first.", (session, _, _) => Next.Of(session.Put((CautionsPage)session.Top with { Strayed = false }).Say(NotTaken, Look.Watch)), KeyName.Enter) with { Applies = s => ((CautionsPage)s.Top).Strayed },
        KeyRow.Named("Enter", "write it", "It was read: writes it. The other of the two can be put right next.", (session, _, _) => ((CautionsPage)session.Top).Then(session), KeyName.Enter) with { Applies = s => ((CautionsPage)s.Top).Writes },
        KeyRow.Named("Enter", "read", "Goes on to what is still asked; the caution stays above it.", (session, _, _) => ((CautionsPage)session.Top).Then(session), KeyName.Enter),
        Scrolling.Keys,
        UsualKeys.Back("One step back; nothing is written."),
        UsualKeys.Help,
        new KeyRow("text", "", "Is not taken here: what is needed is asked for by name, with the caution in sight.", TextLine.IsWritten, (session, _, _) => Next.Of(session.Put((CautionsPage)session.Top with { Strayed = true }).Say(NotTaken, Look.Watch))));

    private const string NotTaken = "what is typed on this page is not taken: read it, and Enter goes on";

    /// <summary>Something was typed where nothing is asked: the Enter behind it was not meant for what stands here.</summary>
    public bool Strayed { get; init; }

    /// <summary>Nothing more is asked behind it: the key that reads it writes.</summary>
    public bool Writes { get; init; }

    public override KeyTable Keys => Table;

    /// <summary>What contradicts it, and then it is written; written at once when nothing does.</summary>
    public static Next BeforeWriting(Session session, string? yet, Func<Session, Next> write) =>
        yet is null ? write(session) : Next.Of(session.Open(new CautionsPage(yet, [], write) { Writes = true }));

    /// <summary>What is asked next, behind what contradicts it and the cautions that the site has for one of these triggers.</summary>
    public static Next Before(Session session, IReadOnlyList<string> triggers, string? yet, Func<Session, Next> then)
    {
        var cautions = session.Site.Cautions.Where(c => c.Triggers.Intersect(triggers, StringComparer.OrdinalIgnoreCase).Any()).ToList();
        return yet is null && cautions.Count == 0 ? then(session) : Next.Of(session.Open(new CautionsPage(yet, cautions, then)));
    }

    public Page ScrolledTo(int line) => this with { Scroll = line };

    public override Layout Draw(Session session) => new([Line.Of(" CAUTION", Look.Hurts), Line.Empty], Lines(session), Scroll, Scroll, []) { Top = Scroll };

    private List<Line> Lines(Session session) =>
    [
        .. Yet is null ? [] : Gutter.Lines("STOP", Look.Hurts, Yet, session.Width, rest: Look.Hurts).Append(Line.Empty),
        .. Cautions.SelectMany(c => Gutter.Lines("caution", Look.Hurts, $"{c.Hazard}: {Say.Sentence(c.Text)}", session.Width, rest: Look.Strong)
            .Concat(Gutter.Lines("wear", Look.Strong, Say.Sentence(c.Ppe), session.Width))
            .Concat(Gutter.Lines("first aid", Look.Strong, Say.Sentence(c.FirstAid), session.Width))
            .Concat(Gutter.Lines("source", Look.Faint, $"{c.Source}, revision {c.Revision}{(c.ApprovedBy is null ? ", DRAFT, not approved by the site" : "")}", session.Width))
            .Append(Line.Empty)),
    ];
}
