using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>A point's limits in a stretch of time: a value is looked at beside the limits of its day.</summary>
public sealed record LimitsThen(DateTimeOffset From, DateTimeOffset To, Limits Limits)
{
    /// <summary>The limits that were in force in [from, to), in order and without a gap.</summary>
    public static IReadOnlyList<LimitsThen> Of(Desk desk, string point, DateTimeOffset from, DateTimeOffset to) =>
    [
        .. SiteInForce.Since(desk, from).Where(s => s.From < to)
            .Select(s => new LimitsThen(s.From < from ? from : s.From, s.To > to ? to : s.To, s.Site.FindPoint(point)?.Limits ?? Limits.None)),
    ];
}
