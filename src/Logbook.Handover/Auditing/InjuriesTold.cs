using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>Injuries that were told in words alone, in a remark or with an emergency relief: without an item nobody follows them up.</summary>
internal static class InjuriesTold
{
    public static IEnumerable<AuditFlag> Of(AuditSpan span) => span.Records.Where(InjuryWords.TellsOfInjury).Select(r => new AuditFlag(
        Audit.Hazard, r.Shift, r.At, null, null,
        $"injury, told in words: {InjuryWords.Said(span.Desk, r)} {Say.Day(span.Desk.Site, r.At)} {Say.Person(span.Desk.Site, r.By)} {Say.Ref(r.Seq)}", r.Seq));
}
