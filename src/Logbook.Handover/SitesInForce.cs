using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>A site and the stretch in which it was in force: a new schedule makes no check of the past missed.</summary>
internal sealed record SiteInForce(Site Site, DateTimeOffset From, DateTimeOffset To)
{
    /// <summary>The sites in force from <paramref name="from"/> on, in order. The first one also rules what lies before its adoption.</summary>
    public static IReadOnlyList<SiteInForce> Since(Desk desk, DateTimeOffset begun, DateTimeOffset from)
    {
        if (desk.State.SiteSince <= from)
        {
            return [new SiteInForce(desk.Site, DateTimeOffset.MinValue, DateTimeOffset.MaxValue)];
        }

        var adopted = desk.Store.Between(from, desk.Now.AddMinutes(1)).Where(r => r.Body is SiteAdopted).OrderBy(r => r.Seq).ToList();
        var end = from;
        for (var days = 2; adopted.Count > 0 && end > begun && adopted[0].At >= from; days *= 4)
        {
            var start = end.AddDays(-days);
            adopted.InsertRange(0, desk.Store.Between(start, end).Where(r => r.Body is SiteAdopted).OrderBy(r => r.Seq).TakeLast(1));
            end = start;
        }

        return adopted.Count == 0
            ? [new SiteInForce(desk.Site, DateTimeOffset.MinValue, DateTimeOffset.MaxValue)]
            : [.. adopted.Select((record, i) => new SiteInForce(
                i == adopted.Count - 1 ? desk.Site : Read(desk, (SiteAdopted)record.Body),
                i == 0 ? DateTimeOffset.MinValue : record.At,
                i == adopted.Count - 1 ? DateTimeOffset.MaxValue : adopted[i + 1].At))];
    }

    /// <summary>The site that ruled at that moment: a pattern that changed later makes no shift of the past another one.</summary>
    public static Site At(Desk desk, DateTimeOffset at) => desk.State.SiteSince is not { } since || since <= at
        ? desk.Site
        : Since(desk, JournalSpan.Begin(desk), at).Last(s => s.From <= at).Site;

    // Files that today's program cannot read any more leave today's site as the best there is.
    private static Site Read(Desk desk, SiteAdopted adopted) =>
        SiteReader.Read(new SiteFiles(adopted.Files)) is { Ok: true, Value: { } site } ? site : desk.Site;
}
