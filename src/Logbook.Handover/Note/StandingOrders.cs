namespace Logbook.Handover;

/// <summary>Orders that stand: new ones of this shift first, each with who has read it.</summary>
internal static class StandingOrders
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of(
        "orders",
        "ORDERS",
        facts.State.Orders.Where(o => o.HoldsAt(facts.AsOf)).OrderByDescending(o => o.Since >= facts.Shift.Start).ThenBy(o => o.Since).Select(o => new NoteLine(
            (o.Since >= facts.Shift.Start ? "new " : "") + o.Id.ToString(System.Globalization.CultureInfo.InvariantCulture),
            $"{Say.Sentence(o.Text)} {Say.Person(facts.Site, o.By)} {facts.Time(o.Since)}{(o.Until is { } end ? $", until {facts.Time(end)}" : "")}. Read by {Readers(facts, o.Seen)} {Say.Ref(o.Id)}")));

    private static string Readers(ShiftFacts facts, IReadOnlyDictionary<string, DateTimeOffset> seen) =>
        seen.Count == 0 ? "nobody yet" : string.Join(", ", seen.OrderBy(s => s.Value).Select(s => $"{Say.Person(facts.Site, s.Key)} {facts.Time(s.Value)}"));
}
