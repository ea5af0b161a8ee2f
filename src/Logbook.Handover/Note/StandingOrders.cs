using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>Orders: those that were withdrawn in this shift first, since somebody may still work by them; then what stands, new ones first, each with who has read it. Older ones that everybody of both shifts has read are told in a few words each.</summary>
internal static class StandingOrders
{
    // Of one that everybody has read: enough to know it again by.
    private const int Few = 60;

    /// <param name="by">Who reads it, where that is known.</param>
    public static NoteSection Of(ShiftFacts facts, string? by = null)
    {
        var people = People(facts, by);
        var standing = facts.State.Orders.Where(o => o.HoldsAt(facts.AsOf)).ToLookup(o => o.Since < facts.Shift.Start && people.Count > 0 && people.All(o.Seen.ContainsKey));
        return NoteSection.Of("orders", "ORDERS", [.. Lines(facts, standing[false]), .. Known([.. standing[true]])]);
    }

    /// <summary>Who is due in this shift and the next, and who holds the line.</summary>
    private static List<string> People(ShiftFacts facts, string? by) =>
    [
        .. OnShift.DueBy(facts.Site, facts.Shift, facts.State.Roster), .. OnShift.DueBy(facts.Site, facts.Next, facts.State.Roster),
        .. new[] { facts.State.Line.Holder?.Code, by }.OfType<string>(),
    ];

    private static IEnumerable<NoteLine> Known(List<StandingOrder> orders) => orders.Count == 0 ? []
        : [new NoteLine("known", $"{Say.Count(orders.Count, "older order")}, read by everybody of this shift and the next: {string.Join("; ", orders.Select(o => $"{InShort(Say.Visible(o.Text).Trim())} {Say.Ref(o.Id)}"))}")];

    /// <summary>The first words, which say what it is about; the whole stands under its number.</summary>
    private static string InShort(string text) => text.Length <= Few ? text
        : text[..(text.LastIndexOf(' ', Few) is > 0 and var end ? end : Few)].TrimEnd(' ', ',', ';', ':', '.') + "...";

    private static IEnumerable<NoteLine> Lines(ShiftFacts facts, IEnumerable<StandingOrder> standing) =>
        facts.State.Orders.Where(o => o.Withdrawn?.At >= facts.Shift.Start).Select(o => new NoteLine(
            "ended " + o.Id.ToString(System.Globalization.CultureInfo.InvariantCulture),
            $"WITHDRAWN: {Say.Sentence(o.Text)} Given by {Say.Person(facts.Site, o.By)} {facts.Time(o.Since)}, withdrawn by {Say.Person(facts.Site, o.Withdrawn!.By)} {facts.Time(o.Withdrawn.At)}: {Say.Sentence(o.Withdrawn.Why)}{Untold(facts, o)} {Say.Ref(o.Withdrawn.Seq)}"))
            .Concat(standing.OrderByDescending(o => o.Since >= facts.Shift.Start).ThenBy(o => o.Since).Select(o => new NoteLine(
                (o.Since >= facts.Shift.Start ? "new " : "") + o.Id.ToString(System.Globalization.CultureInfo.InvariantCulture),
                $"{Say.Sentence(o.Text)} {Say.Person(facts.Site, o.By)} {facts.Time(o.Since)}{(o.Until is { } end ? $", until {facts.Time(end)}" : "")}. Read by {Readers(facts, o.Seen)} {Say.Ref(o.Id)}")));

    /// <summary>Who had read the order and not yet that it holds no longer.</summary>
    private static string Untold(ShiftFacts facts, Journal.StandingOrder order) =>
        order.Seen.Keys.Where(order.EndIsNewTo).Select(code => Say.Person(facts.Site, code)).Order(StringComparer.Ordinal).ToList() is { Count: > 0 } people ? $" Not read yet by {string.Join(", ", people)}." : "";

    private static string Readers(ShiftFacts facts, IReadOnlyDictionary<string, DateTimeOffset> seen) =>
        seen.Count == 0 ? "nobody yet" : string.Join(", ", seen.OrderBy(s => s.Value).Select(s => $"{Say.Person(facts.Site, s.Key)} {facts.Time(s.Value)}"));
}
