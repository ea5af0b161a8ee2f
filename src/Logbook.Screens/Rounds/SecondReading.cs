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

    /// <summary>Why it cannot be typed now; null when it can.</summary>
    public static string? WhyNot(Session session, string tag) => RecordAsks.NobodyTypes(session)
        ?? (session.Draft is null ? null : "v on Now saves first what is typed")
        ?? (RoundOf(session.Site, tag) is null ? $"{tag} stands in no round: logbook record takes it" : null);

    public static Next Open(Session session, long seq, string tag) =>
        Next.Of(session, new OpenRound(RoundOf(session.Site, tag)!, null, Of(session.Site, seq, tag)));

    private static Round? RoundOf(Site site, string tag) => site.Rounds.FirstOrDefault(r => r.Points.Contains(tag, StringComparer.OrdinalIgnoreCase));
}
