using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>Carried items: opened, confirmed, closed.</summary>
public static partial class Writing
{
    /// <param name="since">Since when it is so; now unless said.</param>
    public static Written AddCarried(Desk desk, Carry item, string by, DateTimeOffset? since = null) => Write(desk, by,
        site => [.. Given.Lately(since, "the time since when", desk.Now), .. CarriedCheck.Mistakes(site, item), .. CarriedCheck.AllowedBy(site, desk.State.IsClosed, item.ItemKind, item.Fields, by), .. Given.NotOver(item.Until, "its end", desk.Now)],
        site => (item with { ItemKind = CarryKinds.Find(item.ItemKind)!.Name, On = Given.Code(site, item.On), Text = item.Text.Trim() }, since ?? desk.Now));

    /// <summary>
    /// Says how an item was found: still so, changed, or not seen. Its own lock a person puts on or takes off in the same way. What
    /// needs a signature is not written here.
    /// </summary>
    public static Written ConfirmCarried(Desk desk, CarryConfirmed look, string by) => Write(desk, by,
        _ => [.. WhyNotConfirm(desk, look, by).ToList() is { Count: > 0 } wrong ? wrong : IsSigned(desk.State, look, by) ? Of("people are counted out by another than the one whose count stands", "the PIN of who counts them out") : []],
        _ => (Trimmed(look), desk.Now));

    /// <summary>
    /// True when a look is signed by PIN: it counts people out of a permit, and it is not the own count of who types it, or somebody
    /// has told of more people since.
    /// </summary>
    public static bool IsSigned(State state, CarryConfirmed look, string by) =>
        state.Carried.Find(c => c.Id == look.Id) is { } item && item.IsCountedOutBy(item.Told(look)) && !item.IsCountOf(by);

    /// <summary>A new end is a change, whether or not words were given to it.</summary>
    public static CarryConfirmed Trimmed(CarryConfirmed look) => look with { Owner = look.Owner?.Trim(), Changed = look.Changed?.Trim() ?? (look.Until is null ? null : CarryConfirmed.ItsEnd) };

    /// <summary>Why the item cannot be told so by that person; empty when it can.</summary>
    public static IEnumerable<Mistake> WhyNotConfirm(Desk desk, CarryConfirmed look, string by) => desk.State.Carried.Find(c => c.Id == look.Id) is { } item
        ?
        [
            .. look is { Seen: false, Changed: not null } ? Of("what was not seen cannot be told as changed", "--changed TEXT or --not-seen") : [],
            .. look is { Seen: false, Until: not null } ? Of("what was not seen cannot be told to end at another time", "--until TIME or --not-seen") : [],
            .. CarriedCheck.NewOwner(desk, item, look, by),
            .. look.Until is not null && item.Until is null ? Of($"item {item.Id} was opened without an end", "an item that has one") : [],
            .. Given.NotOver(look.Until, "its new end", desk.Now),
            .. look.Until > item.Until && item.Fields.ContainsKey("allowed-by") && !look.Fields.ContainsKey("allowed-by")
                ? Of($"the {item.ItemKind} was allowed until its old end alone: it is not said who allows it to go on", "--set allowed-by=CODE") : [],
            .. look.Changed is { } words ? Given.Text(words, "what changed") : [],
            .. CarriedCheck.Values(item.ItemKind, look.Fields, item.Fields.Keys),
            .. CarriedCheck.AllowedBy(desk.Site, desk.State.IsClosed, item.ItemKind, look.Fields, by, item.By),
            .. CarriedCheck.CountedDown(desk, item, item.Told(look), by),
            .. CarriedCheck.Unhung(desk.State.Carried, item, item.Told(look)),
            .. look.Lock is null ? [] : CarriedCheck.LockOrder(desk.Site, item, look.Lock, by),
        ]
        : NotOpen(desk.State, look.Id);

    public static Written CloseCarried(Desk desk, CarryClosed closed, string by) =>
        Write(desk, by, _ => WhyNotClose(desk, closed, by), _ => (Trimmed(closed), desk.Now));

    public static CarryClosed Trimmed(CarryClosed closed) => closed with { Why = closed.Why.Trim() };

    /// <summary>Why the item cannot be closed; empty when it can.</summary>
    public static IEnumerable<Mistake> WhyNotClose(Desk desk, CarryClosed closed, string by) =>
    [
        .. Given.Text(closed.Why, "the reason for closing"),
        .. desk.State.Carried.Find(c => c.Id == closed.Id) is { } item ? CarriedCheck.LocksOff(desk.Site, item, closed.Lock, by) : NotOpen(desk.State, closed.Id),
    ];

    private static IEnumerable<Mistake> NotOpen(State state, long id) => Of($"no carried item {id} is open", state.Carried.Count == 0
        ? "none is open"
        : "open: " + string.Join(", ", state.Carried.Select(c => $"{c.Id} {c.ItemKind} at {c.On}")));
}
