using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>The first of the readings of one head that have been beyond its limits without a break, where that is not the newest.</summary>
/// <param name="Urgent">True when one of those before the newest was beyond the urgent limit.</param>
internal sealed record GasBegun(DateTimeOffset At, long Seq, bool Urgent)
{
    // Gas that stands for longer than this says so in the notes of every shift since. Judgement, no source.
    private static readonly TimeSpan Back = TimeSpan.FromDays(7);

    public static readonly IReadOnlyDictionary<string, GasBegun> None = new Dictionary<string, GasBegun>(StringComparer.OrdinalIgnoreCase);

    /// <summary>By tag, of the heads at which gas stands. From their values: what was put right, or entered for an earlier time, counts as it stands then.</summary>
    public static IReadOnlyDictionary<string, GasBegun> Of(Desk desk, Site site, State state) => (
        from open in state.Findings
        let point = site.FindPoint(open.Key)
        where point is not null && open.Value.Exists(f => Hazards.WordOf(point, f.Finding) == "gas")
        let begun = state.Latest.TryGetValue(open.Key, out var newest) ? Before(desk, state, point, newest) : null
        where begun is not null
        select (open.Key, begun)).ToDictionary(x => x.Key, x => x.begun, StringComparer.OrdinalIgnoreCase);

    private static GasBegun? Before(Desk desk, State state, Point point, SeriesValue newest)
    {
        var lowest = point.Limits.WatchHigh ?? point.Limits.UrgentHigh;
        var before = desk.Store.Series(point.Tag, newest.At - Back, newest.At.AddMilliseconds(1), state.Head.Seq)
            .Where(v => v.Value is not null && v.Seq != newest.Seq).Reverse().TakeWhile(v => v.Value > lowest).ToList();
        return before.Count == 0 ? null : new GasBegun(before[^1].At, before[^1].Seq, before.Exists(v => v.Value > point.Limits.UrgentHigh));
    }
}
