using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What is carried and can wait, oldest first, with its age.</summary>
internal static class StillOpen
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of(
        "still-open",
        "STILL OPEN",
        [
            .. ToAnswer(facts.State, facts.Time),
            .. facts.State.Carried.Where(i => !i.IsHazard && !NotNormal.IsTemporary(i)).Select(i => Line(facts, i)),
            .. facts.State.Departments.Select(n => new NoteLine(
                "told", $"{Say.Visible(n.To)}: {Say.Visible(n.Text)}; nobody there has acknowledged it. {Say.Person(facts.Site, n.By)} {facts.Time(n.At)} {Say.Ref(n.Id)}")),
            .. facts.State.ClockJumps.Select(j => new NoteLine(
                "clock", $"jumped back from {Say.Day(facts.Site, j.Before)} to {Say.Day(facts.Site, j.After)}; times near it may mislead; nobody has looked at it {Say.Ref(j.Id)}")),
        ]);

    /// <summary>What was urgent and of which nobody has said why, and who was told; over or not.</summary>
    /// <param name="time">How a time is said there.</param>
    public static IEnumerable<NoteLine> ToAnswer(State state, Func<DateTimeOffset, string> time) => state.Unanswered.Select(f => new NoteLine(
        "answer", $"{Say.Visible(f.Finding.Point ?? "line")} urgent {time(f.At)}: cause, who was told? Answer {f.Seq}.{f.Number}"));

    /// <param name="brief">Without whose it is and who opened it.</param>
    public static NoteLine Line(ShiftFacts facts, CarriedItem item, bool brief = false) => new(
        item.ItemKind == "temporary-change" ? "temporary" : Say.Kind(item.ItemKind),
        $"{Say.Equipment(facts.Site, item.On)}: {Carried.Rest(facts.Site, item, facts.AsOf, brief)}. {(brief ? Carried.Looked(facts.Site, item, facts.AsOf) + Say.Ref(item.Id) : Carried.Opened(facts.Site, item, facts.AsOf))}");
}
