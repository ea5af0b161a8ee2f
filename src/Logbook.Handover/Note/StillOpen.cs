using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What is carried and can wait, oldest first, with its age.</summary>
internal static class StillOpen
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of(
        "still-open",
        "STILL OPEN",
        facts.State.Carried.Where(i => !i.IsHazard && !NotNormal.IsTemporary(i)).Select(i => Line(facts, i)));

    public static NoteLine Line(ShiftFacts facts, CarriedItem item) => new(
        item.ItemKind == "temporary-change" ? "temporary" : Say.Visible(item.ItemKind.Replace('-', ' ')),
        $"{Say.Equipment(facts.Site, item.On)}: {Carried.Rest(facts.Site, item, facts.AsOf)}. {Carried.Opened(facts.Site, item, facts.AsOf)}");
}
