using Logbook.Checks.Examining;
using Logbook.Contracts;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>
/// What an entry is judged by: the site, state and journal of its day. A correction is judged by the day of its entry,
/// and sees nothing that was written from that entry on but what was put right of those before it.
/// </summary>
/// <param name="Before">Only records below this sequence number count.</param>
/// <param name="Recent">The last day and a half at hand; null where the store must be asked.</param>
/// <param name="Examinations">The desk's cross-examination.</param>
internal sealed record Day(Site Site, State State, IJournalStore Store, CalculationGraph Graph, IGuard Guard, long Before, Recent? Recent, Examinations Examinations)
{
    /// <summary>Values are compared over this long; a point's own <c>stale</c> rules where that is longer.</summary>
    private static readonly TimeSpan Memory = TimeSpan.FromHours(24);

    private static readonly TimeSpan Near = TimeSpan.FromHours(2);

    public static Day Today(Desk desk) => new(desk.Site, desk.State, desk.Store, desk.Graph, desk.Guard, long.MaxValue, desk.Recent, desk.Examinations);

    /// <summary>The entry whose readings are taken a second time: what is read again is not compared with what it is to check.</summary>
    public long? SecondOf { get; init; }

    /// <summary>The newest number of a point at <paramref name="at"/>, whatever its age up to a day; null when there is none.</summary>
    public SeriesValue? Last(Point point, DateTimeOffset at) => Last(point, at, without: null);

    /// <summary>The newest number with which a new reading of the point is compared.</summary>
    public SeriesValue? LastCompared(Point point, DateTimeOffset at) => Last(point, at, SecondOf);

    /// <summary>The numbers with which a new reading of the point is compared.</summary>
    public IEnumerable<SeriesValue> Compared(Point point, DateTimeOffset from, DateTimeOffset to) => Series(point, from, to).Where(v => v.Seq != SecondOf);

    private SeriesValue? Last(Point point, DateTimeOffset at, long? without)
    {
        var latest = State.Latest.GetValueOrDefault(point.Tag);
        if (latest is null)
        {
            return null;
        }

        if (latest.Value is not null && latest.At <= at && latest.Seq != without)
        {
            return latest;
        }

        // Mostly it lies within the last hours: the far past is read only when it does not.
        var memory = point.Stale > Memory ? point.Stale : Memory;
        return Series(point, at - Near, at).LastOrDefault(v => v.Seq != without) ?? Series(point, at - memory, at - Near).LastOrDefault(v => v.Seq != without);
    }

    /// <summary>The numbers of a point from <paramref name="from"/> to <paramref name="to"/>, both included, oldest first.</summary>
    public IEnumerable<SeriesValue> Series(Point point, DateTimeOffset from, DateTimeOffset to) =>
        (Recent?.Between(point.Tag, from, to) ?? Store.Series(point.Tag, from, to.AddMilliseconds(1), Before - 1)).Where(v => v.Value is not null);

    /// <summary>Standard uncertainty of a value of the past. A derived point has none of its own: the record that computed it has.</summary>
    public double UOf(Point point, SeriesValue value) => point.Kind == PointKind.Read
        ? point.U?.Of(value.Value!.Value) ?? 0
        : (Recent?.ResultOf(value) ?? Stored(point, value))?.U ?? 0;

    private Result? Stored(Point point, SeriesValue value)
    {
        IReadOnlyList<Result> results = Store.Read(value.CorrectedBy ?? value.Seq).FirstOrDefault()?.Body switch
        {
            Entry entry => entry.Results,
            Correction correction => correction.Results,
            _ => [],
        };
        return results.FirstOrDefault(r => point.Tag.Equals(r.Point, StringComparison.Ordinal));
    }

    /// <summary>
    /// Equipment is at work when it runs or is being started: what rests at standstill matters most at a start. Before the
    /// time since which its state is known it counts as at work, so that no limit is lost.
    /// </summary>
    public bool AtWork(string? equipment, DateTimeOffset at) =>
        equipment is null || !State.Equipment.TryGetValue(equipment, out var status) || at < status.Since || EquipmentStates.IsAtWork(status.State);

    /// <summary>True when the equipment has been in its present state since before <paramref name="at"/>.</summary>
    public bool SameStateSince(string? equipment, DateTimeOffset at) =>
        equipment is null || !State.Equipment.TryGetValue(equipment, out var status) || status.Since <= at;
}
