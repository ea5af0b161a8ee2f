using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// The shift whose handover is in hand: the one before while its holder still has the line in the first half of the next,
/// else the running one.
/// </summary>
internal static class ShiftInHand
{
    public static ShiftInstance Of(Desk desk)
    {
        var (site, line, now) = (desk.Site, desk.State.Line, desk.Now);
        var running = Calendar.ShiftAt(site, now);
        var late = now - running.Start < (running.End - running.Start) / 2;
        var since = line.Holder is { } holder ? holder.Continued ?? holder.Since : line.NobodySince;
        return late && since < running.Start && !BelongsTo(running, since.Value) ? Calendar.ShiftAt(site, running.Start.AddTicks(-1)) : running;
    }

    /// <summary>Taken in the last half of the shift before, the line was taken for the one that follows.</summary>
    private static bool BelongsTo(ShiftInstance running, DateTimeOffset since) => running.Start - since < (running.End - running.Start) / 2;
}
