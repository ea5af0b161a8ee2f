using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What could hurt and ended in the shift, a short line each: who comes must not look for it, nor wonder where it went.</summary>
internal static class EndedHazards
{
    public static IEnumerable<NoteLine> Of(ShiftFacts facts) => facts.Records.OrderBy(r => r.At).ThenBy(r => r.Seq)
        .Select(r => r.Body switch
        {
            CarryClosed => Closed(facts, r),
            EquipmentStateChanged { State: not "acid" } change when WasInAcid(facts, change, r.Seq) =>
                ("ended", $"acid, {Say.Equipment(facts.Site, change.Equipment)}: {Say.Visible(change.State)} since {facts.Time(change.Since)}{(string.IsNullOrWhiteSpace(change.Why) ? "" : ", " + Say.Visible(change.Why))}"),
            _ => default((string, string)?),
        } is var (label, what) ? new NoteLine(label, $"{facts.Time(r.At)} {what}. {Say.Person(facts.Site, r.By)} {Say.Ref(r.Seq)}") : null)
        .OfType<NoteLine>();

    /// <summary>Somebody who was hurt, and what got out, keep their word: of those it must not be said that none is recorded.</summary>
    private static (string Label, string Words)? Closed(ShiftFacts facts, JournalRecord record) =>
        (CarryClosed)record.Body is var closed && Opened(facts.Desk, closed) is { Body: Carry carry } opened
            ? (carry.ItemKind is "injury" or "release" ? carry.ItemKind : "ended", $"{Say.Kind(carry.ItemKind)}, {Say.Equipment(facts.Site, carry.On)}: {Say.Visible(closed.Why)}{LastChange(facts, opened.Seq, record.Seq)}{LastCount.Words(facts.Site, facts.Records, opened, record, facts.Time)}{LastLock.Words(facts.Site, facts.Records, opened, record)}") : null;

    /// <summary>What was said of it last before it was closed: that may be there still.</summary>
    private static string LastChange(ShiftFacts facts, long item, long closed) =>
        facts.Records.LastOrDefault(r => r.Seq < closed && r.Body is CarryConfirmed { Changed: { } changed } look && look.Id == item && changed != CarryConfirmed.ItsEnd) is { } told
            ? $"; said {facts.Time(told.At)}: {Say.Visible(((CarryConfirmed)told.Body).Changed!)} {Say.Ref(told.Seq)}" : "";

    /// <summary>The record that opened what was closed, when that could hurt; null when it could not. What could hurt is closed by PIN.</summary>
    public static JournalRecord? Opened(Desk desk, CarryClosed closed) =>
        desk.Store.Read(closed.Id).FirstOrDefault() is { Body: Carry carry } record && record.Seq == closed.Id
        && (closed.Signed is not null || CarriedItem.CanHurt(carry.ItemKind, carry.Text, carry.Fields)) ? record : null;

    private static bool WasInAcid(ShiftFacts facts, EquipmentStateChanged change, long seq) =>
        facts.Equipment.At(change.Equipment, change.Since, before => before < seq) is { Body.State: "acid" };
}
