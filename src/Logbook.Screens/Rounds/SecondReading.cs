using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Readings that are taken a second time, because the cross-examination says that they would tell.</summary>
/// <param name="Seq">The entry that has the first ones.</param>
/// <param name="Points">Tags; of a sample all of its readings.</param>
internal sealed record SecondReading(long Seq, IReadOnlyList<string> Points)
{
    public static SecondReading Of(Site site, long seq, string tag) => new(seq, site.FindPoint(tag)?.Sample is { } sample
        ? [.. site.Points.Where(p => p.Kind == PointKind.Read && p.Sample == sample).Select(p => p.Tag)]
        : [tag]);

    /// <summary>The key of a page that shows findings.</summary>
    /// <param name="shown">The record that they stand in, null while it is not saved, and the findings.</param>
    public static KeyRow Key(Func<Session, (long? Seq, IReadOnlyList<Finding> Findings)> shown) =>
        KeyRow.Letter('s', "second reading", "Takes a second time what would tell: an entry of its own beside the first, which stays as it is.", (session, _) =>
        {
            var (seq, findings) = shown(session);
            var tag = Settling(session.Site, findings)!;
            return Next.Of(session.Back(), new OpenRound(RoundOf(session.Site, tag)!, null, Of(session.Site, seq!.Value, tag)));
        }) with { WhyNot = session => shown(session) is { Seq: not null } there ? WhyNot(session, Settling(session.Site, there.Findings)) : "it is not in the journal yet" };

    /// <summary>From the round itself: the first one is saved, so that the second is an entry of its own. The question stays open for its digits when that cannot be yet.</summary>
    public static Next OfSaved(Session session, Round round, long seq, string tag) => session.Draft is null
        ? Next.Of(session, new OpenRound(round, null, Of(session.Site, seq, tag)))
        : Next.Of(session.Open(RoundAsks.Nothing(
            $"The first reading of {tag} is saved {Handover.Say.Ref(seq)}: a second one is an entry of its own", "Esc, then Esc saves what is typed here; then s in that record")));

    private static string? WhyNot(Session session, string? tag) => tag is null ? "no second reading would tell"
        : RecordAsks.NobodyTypes(session)
        ?? (session.Draft is null ? null : "v on Now saves first what is typed")
        ?? (RoundOf(session.Site, tag) is null ? $"{tag} stands in no round, so no key takes it: at the command line, record" : null);

    /// <summary>What the finding says that would tell; of end points that cannot be true together, the sample titrated once more.</summary>
    private static string? Settling(Site site, IReadOnlyList<Finding> findings) =>
        findings.Select(f => f.Settles ?? (site.FindPoint(f.Point ?? "") is { } point && Judging.IsImpossible(point, f) ? point.Tag : null)).FirstOrDefault(tag => tag is not null);

    private static Round? RoundOf(Site site, string tag) => site.Rounds.FirstOrDefault(r => r.Points.Contains(tag, StringComparer.OrdinalIgnoreCase));
}
