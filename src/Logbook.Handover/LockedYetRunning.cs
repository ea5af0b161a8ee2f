using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// Equipment that is recorded as locked and as running: one of the two is not true, and which one the log cannot know. Said
/// when either is recorded, and wherever the lock stands.
/// </summary>
public static class LockedYetRunning
{
    /// <summary>What was just recorded of this equipment makes the two stand beside each other: the words to say at once; null when it does not.</summary>
    public static string? Warning(Desk desk, string on) =>
        desk.State.Carried.Find(i => i.ItemKind == "isolation" && i.On.Equals(on, StringComparison.OrdinalIgnoreCase)) is { } item && Beside(desk.Site, desk.State, item, desk.Now) is { } words
            ? $"{Say.Equipment(desk.Site, item.On)} is locked, DO NOT START {Say.Ref(item.Id)}. {words}"
            : null;

    /// <summary>What stands beside the lock; null unless somebody recorded that it runs or starts.</summary>
    internal static string? Beside(Site site, State state, CarriedItem item, DateTimeOffset now) =>
        state.Equipment.GetValueOrDefault(item.On) is { } status && EquipmentHistory.Runs(status.State)
            ? $"YET RECORDED AS {status.State.ToUpperInvariant()} since {Say.Time(site, status.Since, now)} {Say.Ref(status.Seq)}: one of the two is not true; keep everybody clear of it and go by the lock board."
            : null;
}
