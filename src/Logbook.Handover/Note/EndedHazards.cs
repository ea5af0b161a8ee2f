using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What could hurt and ended in the shift, a short line each: who comes must not look for it, nor wonder where it went.</summary>
internal static class EndedHazards
{
    public static IEnumerable<NoteLine> Of(ShiftFacts facts) => facts.Records.OrderBy(r => r.At).ThenBy(r => r.Seq)
        .Select(r => r.Body switch
        {
            CarryClosed closed => Closed(facts, closed),
            EquipmentStateChanged { State: not "acid" } change when WasInAcid(facts, change, r.Seq) =>
                $"acid, {Say.Equipment(facts.Site, change.Equipment)}: {Say.Visible(change.State)} since {facts.Time(change.Since)}",
            _ => null,
        } is { } what ? new NoteLine("ended", $"{facts.Time(r.At)} {what}. {Say.Person(facts.Site, r.By)} {Say.Ref(r.Seq)}") : null)
        .OfType<NoteLine>();

    private static string? Closed(ShiftFacts facts, CarryClosed closed) =>
        Opened(facts.Desk, closed) is { Body: Carry carry } ? $"{Say.Kind(carry.ItemKind)}, {Say.Equipment(facts.Site, carry.On)}: {Say.Visible(closed.Why)}{Counted(facts, closed.Id, carry)}" : null;

    /// <summary>Who told last how many are inside, where that was not the permit's own owner: on that word it was closed.</summary>
    private static string Counted(ShiftFacts facts, long item, Carry permit) =>
        facts.Records.Where(r => r.Body is CarryConfirmed look && look.Id == item && look.Fields.ContainsKey("inside")).MaxBy(r => r.Seq) is { Body: CarryConfirmed count } record
            ? $"; counted {Say.Visible(count.Fields["inside"])} at {facts.Time(record.At)} by {Say.Person(facts.Site, record.By)}{(permit.Owner is { } owner && !owner.Equals(record.By, StringComparison.OrdinalIgnoreCase) ? $", not by its owner {Say.Person(facts.Site, owner)}" : "")} {Say.Ref(record.Seq)}"
            : "";

    /// <summary>The record that opened what was closed, when that could hurt; null when it could not. What could hurt is closed by PIN.</summary>
    public static JournalRecord? Opened(Desk desk, CarryClosed closed) =>
        desk.Store.Read(closed.Id).FirstOrDefault() is { Body: Carry carry } record && record.Seq == closed.Id
        && (closed.Signed is not null || CarriedItem.CanHurt(carry.ItemKind, carry.Text, carry.Fields)) ? record : null;

    private static bool WasInAcid(ShiftFacts facts, EquipmentStateChanged change, long seq) =>
        facts.Equipment.At(change.Equipment, change.Since, before => before < seq) is { Body.State: "acid" };
}
