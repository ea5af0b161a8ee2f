using System.Globalization;
using Logbook.Checks.Signals;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// Readings that look copied or too smooth: evidence to look at, with what innocently explains it and what would settle it.
/// By round and shift alone; nothing here is computed for a person (see <see cref="OwnAudit"/>).
/// </summary>
internal static class LooksAlike
{
    private static readonly string[] Innocent = ["Also seen when: steady plant, stuck gauge, coarse display.", "Would settle: the next crew's reading of the same points.", "Not a finding about anyone."];

    public static IEnumerable<AuditFlag> Flags(AuditSpan span)
    {
        var equipment = EquipmentHistory.Of(span.Desk, span.WithHistory, span.From);
        return span.Desk.Site.Rounds.SelectMany(round => Of(span, round, equipment));
    }

    private static IEnumerable<AuditFlag> Of(AuditSpan span, Round round, EquipmentHistory equipment)
    {
        var site = span.Desk.Site;
        var points = round.Points.Select(site.FindPoint).OfType<Point>().Where(p => p.Choices.Count == 0).ToList();
        var walks = span.Entries.Where(e => round.Id.Equals(e.Entry.Round, StringComparison.OrdinalIgnoreCase) && e.Entry is { Imported: null, SecondOf: null })
            .Select(e => Row(e.Record, e.Entry, points, equipment)).OrderBy(w => w.At).ToList();
        return SameAsEarlier.Find(walks, span.From).Select(s => Same(site, round, s))
            .Concat(VariesLess.Find(walks, [.. points.Select(Step)], span.From).Select(q => Quiet(site, round, points, q)));
    }

    private static double Step(Point point) => point.Resolution ?? Math.Pow(10, -point.Decimals);

    private static Walk Row(JournalRecord record, Entry entry, List<Point> points, EquipmentHistory equipment)
    {
        var values = entry.Readings.Where(r => r.Value is not null).GroupBy(r => r.Point, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(g => g.Key, g => g.Last().Value, StringComparer.OrdinalIgnoreCase);
        return new Walk(
            record.Shift, record.At,
            [.. points.Select(p => equipment.At(p.Equipment, record.At) is { } change && !EquipmentHistory.Runs(change.State) ? null : values.GetValueOrDefault(p.Tag))],
            record.Seq);
    }

    private static AuditFlag Same(Site site, Round round, SameSignal signal) => new(
        "same-as-earlier", signal.Walk.Shift, signal.Walk.At, round.Id, null,
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Say.Visible(round.Title)} {Say.Day(site, signal.Walk.At)}: {signal.Equal} of {signal.Of} equal those of {Say.Time(site, signal.Earlier.At, signal.Walk.At)}; usual here {signal.Usual:0.#} {Say.Ref(signal.Walk.Seq, signal.Earlier.Seq)}"),
        signal.Walk.Seq)
    {
        Evidence =
        [
            string.Create(CultureInfo.InvariantCulture, $"The most at that distance in any other shift: {signal.MostElsewhere}. So many or more by chance, among all that were compared: {signal.Adjusted:0.#####}."),
            .. Innocent,
        ],
    };

    private static AuditFlag Quiet(Site site, Round round, List<Point> points, QuietSignal signal) => new(
        "varies-less", signal.Shift, signal.At, round.Id, null,
        string.Create(CultureInfo.InvariantCulture, $"{Say.Visible(round.Title)}, shift {signal.Shift}: {signal.Points.Count} points vary less than usual, {string.Join(", ", signal.Points.Select(q => Say.Visible(points[q.Column].Tag)))}"),
        null)
    {
        Evidence =
        [
            .. signal.Points.Select(q => string.Create(
                CultureInfo.InvariantCulture, $"{Say.Visible(points[q.Column].Tag)}: spread {Figures.Two(q.Spread)} in {q.Readings} readings; in other shifts on the same instrument usually {Figures.Two(q.Usual)} {Say.Visible(points[q.Column].Unit.Name)}.")),
            .. Innocent,
        ],
    };
}
