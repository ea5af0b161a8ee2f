using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>
/// What could hurt in the shift in hand and does so no longer, as the note prints it under what can hurt: gas that is gone, a
/// release, somebody who was hurt, what was seen bad. Whoever declares a section must not read that nothing is recorded of it.
/// </summary>
/// <param name="Word">As of what can hurt now: see <see cref="HazardLine"/>.</param>
/// <param name="Text">Since when it is over, or when it was told, and what it was.</param>
public sealed record OverInShift(string Word, string Text)
{
    public static IReadOnlyList<OverInShift> Of(Desk desk)
    {
        var facts = ShiftFacts.InHand(desk);
        return [.. Told(facts), .. Read(facts), .. Closed(facts)];
    }

    /// <summary>An injury that a remark or a relief tells of.</summary>
    private static IEnumerable<OverInShift> Told(ShiftFacts facts) => facts.Records.Where(InjuryWords.TellsOfInjury).Select(r => new OverInShift(
        "injury", $"told {facts.Time(r.At)}: {InjuryWords.Said(facts.Desk, r)} {Say.Person(facts.Site, r.By)} {Say.Ref(r.Seq)}"));

    private static IEnumerable<OverInShift> Read(ShiftFacts facts) =>
        from excursion in facts.Excursions
        let word = OverHazards.WordOf(facts, excursion)
        where word is not null
        orderby excursion.First
        select new OverInShift(word, $"{(Since(facts, excursion) is { } since ? $"over since {facts.Time(since)}" : "was")}: {OverHazards.Text(facts, word, excursion)}");

    /// <summary>The first value without it; null while it is only less than it was.</summary>
    private static DateTimeOffset? Since(ShiftFacts facts, Excursion excursion) =>
        excursion.Over ? facts.Series[excursion.Point!].Where(s => s.At > excursion.Last).Select(s => (DateTimeOffset?)s.At).FirstOrDefault() : null;

    private static IEnumerable<OverInShift> Closed(ShiftFacts facts) =>
        EndedHazards.Of(facts).Where(l => HazardSections.All.Contains(l.Label, StringComparer.Ordinal)).Select(l => new OverInShift(l.Label, $"over since {l.Text}"));
}
