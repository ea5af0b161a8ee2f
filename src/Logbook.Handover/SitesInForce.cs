using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>A site and the stretch in which it was in force: a new schedule makes no check of the past missed.</summary>
internal sealed record SiteInForce(Site Site, DateTimeOffset From, DateTimeOffset To)
{
    /// <summary>The sites in force from <paramref name="from"/> on, in order. The first one also rules what lies before its adoption.</summary>
    public static IReadOnlyList<SiteInForce> Since(Desk desk, DateTimeOffset from)
    {
        if (desk.State.SiteSince <= from)
        {
            return [new SiteInForce(desk.Site, DateTimeOffset.MinValue, DateTimeOffset.MaxValue)];
        }

        var adopted = desk.State.Adopted;
        return adopted.Count == 0
            ? [new SiteInForce(desk.Site, DateTimeOffset.MinValue, DateTimeOffset.MaxValue)]
            : [.. adopted.Select((one, i) => (
                    From: i == 0 ? DateTimeOffset.MinValue : one.At,
                    To: i == adopted.Count - 1 ? DateTimeOffset.MaxValue : adopted[i + 1].At,
                    one.Seq))
                .Where(stretch => stretch.To > from)
                .Select(stretch => new SiteInForce(Read(desk, stretch.Seq), stretch.From, stretch.To))];
    }

    /// <summary>The site that ruled at that moment: a pattern that changed later makes no shift of the past another one.</summary>
    public static Site At(Desk desk, DateTimeOffset at) => desk.State.SiteSince is not { } since || since <= at
        ? desk.Site
        : Since(desk, at).Last(s => s.From <= at).Site;

    // Files that today's program cannot read any more leave today's site as the best there is.
    private static Site Read(Desk desk, long seq) =>
        seq != desk.State.Adopted[^1].Seq && desk.Store.Read(seq).First().Body is SiteAdopted adopted
        && SiteReader.Read(new SiteFiles(adopted.Files)) is { Ok: true, Value: { } site }
            ? site
            : desk.Site;
}
