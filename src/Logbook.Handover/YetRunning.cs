using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// Equipment that is recorded as running, and as locked, with people inside or in an acid wash: one of the two is not true, and
/// which one the log cannot know. Said when either is recorded, and wherever the hazard stands.
/// </summary>
public static class YetRunning
{
    /// <summary>What was just recorded of this equipment makes the two stand beside each other: the words to say at once; null when it does not.</summary>
    public static string? Warning(Desk desk, string place)
    {
        var words = from item in desk.State.Carried
                    where item.On.Equals(place, StringComparison.OrdinalIgnoreCase)
                    let beside = Beside(desk.Site, desk.State, item, desk.Now)
                    where beside is not null
                    select $"{Say.Equipment(desk.Site, item.On)} {What(item)} {Say.Ref(item.Id)}. {beside}";
        return string.Join(' ', words) is { Length: > 0 } all ? all : null;
    }

    /// <summary>What stands beside the hazard; null unless somebody recorded that it runs or starts.</summary>
    internal static string? Beside(Site site, State state, CarriedItem item, DateTimeOffset now) =>
        Contradicts(item) is { } go && state.Equipment.GetValueOrDefault(item.On) is { } status && EquipmentHistory.Runs(status.State)
        // A wash is opened while its equipment still runs: only what was recorded after that contradicts it.
        && (item.ItemKind != "wash" || status.Seq > item.Id)
            ? $"YET RECORDED AS {status.State.ToUpperInvariant()} since {Say.Time(site, status.Since, now)} {Say.Ref(status.Seq)}: one of the two is not true; {go}."
            : null;

    private static string What(CarriedItem item) => item.ItemKind switch
    {
        "isolation" => "is locked, DO NOT START",
        "permit" => "has a permit to enter",
        _ => "has an open acid wash",
    };

    /// <summary>What to go by while the two stand beside each other; null for an item that running does not contradict.</summary>
    private static string? Contradicts(CarriedItem item) => item.ItemKind switch
    {
        "isolation" => "keep everybody clear of it and go by the lock board",
        "permit" when Hazards.SomeoneInside(item) => "go by the attendant and the lock board at once",
        "wash" when item.IsHazard => "treat it as in acid until somebody has looked",
        _ => null,
    };
}
