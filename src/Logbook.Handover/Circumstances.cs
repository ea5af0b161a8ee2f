using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Why a check does not apply.</summary>
/// <param name="Upset">True when it is an upset, and not the equipment at rest.</param>
internal sealed record Rest(string Why, bool Upset);

/// <summary>What went on around the rounds of a stretch: equipment at rest, and upsets. Safety points apply through both.</summary>
internal sealed record Circumstances(EquipmentHistory Equipment, IReadOnlyList<Upset> Upsets)
{
    /// <param name="then">The state at the stretch's end.</param>
    public static Circumstances Of(Desk desk, State then, IReadOnlyList<JournalRecord> records, DateTimeOffset from)
    {
        var upsets = records.Where(r => r.Body is UpsetDeclared { Ended: not null })
            .Select(r => (UpsetDeclared)r.Body is var u ? new Upset(r.Seq, u.Began, u.Ended, u.Why, r.By) : null!);
        return new Circumstances(EquipmentHistory.Of(desk, records, from), [.. upsets, .. then.Upset is { } open ? [open] : Array.Empty<Upset>()]);
    }

    /// <summary>Why a check that falls due then does not apply; null when it does.</summary>
    /// <param name="insteadOfTrip">What is read instead of a defeated trip is never more needed than in an upset.</param>
    public Rest? Rests(Site site, Point? point, DateTimeOffset dueAt, bool insteadOfTrip)
    {
        if (point is not { Always: false })
        {
            return null;
        }

        return Equipment.At(point.Equipment, dueAt) is { } change && !EquipmentHistory.Runs(change.State)
            ? new Rest($"{Say.Equipment(site, change.Equipment)} {change.State} since {Say.Time(site, change.Since, dueAt)}", Upset: false)
            : !insteadOfTrip && Upsets.FirstOrDefault(u => u.Began <= dueAt && (u.Ended is null || dueAt < u.Ended)) is { } upset
                ? new Rest($"upset {(upset.Ended is null ? "since" : "from")} {Say.Time(site, upset.Began, dueAt)}{(upset.Ended is { } end ? $" to {Say.Time(site, end, dueAt)}" : "")}", Upset: true)
                : null;
    }
}
