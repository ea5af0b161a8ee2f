using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>
/// What people wrote in the shift of a thing that can hurt: of its record, or of its equipment since it is so. It stands in that
/// line, where it is read with it, and in no other.
/// </summary>
internal static class RemarkedOn
{
    /// <summary>Sentences to go behind the line; empty when nobody wrote anything.</summary>
    public static string Words(ShiftFacts facts, HazardLine hazard) => string.Concat(
        Of(facts, hazard).Select(r => $" Written {facts.Time(r.At)}, {Say.Person(facts.Site, r.By)}: {Say.Sentence(((Remark)r.Body).Text)} {Say.Ref(r.Seq)}"));

    /// <summary>True when a remark stands in the line of a hazard.</summary>
    public static bool AHazard(ShiftFacts facts, JournalRecord remark) => facts.Hazards.Any(h => Of(facts, h).Contains(remark));

    private static IEnumerable<JournalRecord> Of(ShiftFacts facts, HazardLine hazard) =>
        facts.Records.Where(r => r.Body is Remark remark && !InjuryWords.TellsOfInjury(r) && (remark.Related == hazard.Seq
            || (remark.On is { } on && Handed.Same(on, On(facts, hazard)) && r.At >= hazard.Since)));

    /// <summary>The equipment that is in acid, locked or entered. A trip or an eyewash only lies at its place: what is written of that place is not of the thing.</summary>
    private static string? On(ShiftFacts facts, HazardLine hazard) => hazard.Word is "defeated" or "out" ? null
        : facts.State.Carried.Find(i => i.Id == hazard.Seq)?.On ?? facts.State.Equipment.Values.FirstOrDefault(e => e.Seq == hazard.Seq)?.Equipment;
}
