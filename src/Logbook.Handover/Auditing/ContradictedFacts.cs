using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// Two things that the log said of one equipment in a stretch and that could not both be true: from which record on they stood
/// beside each other, and which one ended it. Which of the two was true the log cannot know: somebody has to have looked.
/// </summary>
internal static class ContradictedFacts
{
    public static IEnumerable<AuditFlag> Of(AuditSpan span)
    {
        var state = span.BeginState;
        var standing = Standing(span.Desk.Site, state);
        // Of what stood at the begin already, the later of the two records.
        var began = standing.ToDictionary(s => s.Key, s => span.Desk.Store.Read(Math.Max(s.Key.Item, s.Value.Against.Seq)).First());
        foreach (var record in span.WithHistory.Where(r => r.Seq > state.Head.Seq && r.Entered <= span.End && r.Body is Carry or CarryConfirmed or CarryClosed or EquipmentStateChanged))
        {
            state = state.Apply(record);
            var now = Standing(span.Desk.Site, state);
            foreach (var ended in standing.Where(s => !now.ContainsKey(s.Key)))
            {
                began.Remove(ended.Key, out var begun);
                yield return Flag(span, ended.Value, begun!, record);
            }

            foreach (var key in now.Keys.Except(standing.Keys))
            {
                began[key] = record;
            }

            standing = now;
        }

        foreach (var (key, two) in standing)
        {
            yield return Flag(span, two, began[key], null);
        }
    }

    /// <summary>What stands beside each other, by the item, and what is recorded of which equipment: told once more it is the same.</summary>
    private static Dictionary<(long Item, string On, string State), (CarriedItem Item, YetRecorded.Contradiction Against)> Standing(Site site, State state) => state.Carried
        .SelectMany(item => YetRecorded.Each(site, state.Equipment, state.Carried, item).Select(against => (Item: item, Against: against)))
        .DistinctBy(two => (two.Item.Id, two.Against.On, two.Against.State))
        .ToDictionary(two => (two.Item.Id, two.Against.On, two.Against.State));

    // Who closes a wash and who starts its equipment write one after the other. Judgement, no source.
    private static readonly TimeSpan Turn = TimeSpan.FromMinutes(10);

    /// <summary>Of a wash so short a time tells of the order of two entries, not of the plant. Where people or locks are it stays as it is.</summary>
    private static string InTurn(CarriedItem item, JournalRecord begun, JournalRecord ended) =>
        item.ItemKind == "wash" && ended.Entered - begun.Entered <= Turn ? "; within minutes, so that it may be the order of the two entries alone" : "";

    private static AuditFlag Flag(AuditSpan span, (CarriedItem Item, YetRecorded.Contradiction Against) two, JournalRecord begun, JournalRecord? ended)
    {
        var site = span.Desk.Site;
        string Who(JournalRecord record) => $"{Say.Day(site, record.At)} {Say.Person(site, record.By)} {Say.Ref(record.Seq)}";
        return new AuditFlag(
            Audit.Contradicted, begun.Shift, begun.At, null, null,
            $"{YetRecorded.Stands(site, two.Item)}, {two.Against.Recorded(site, two.Item)} {Say.Ref(two.Against.Seq)}, {two.Against.Tellers(site, two.Item)}: {(two.Item.ItemKind == "permit" && SignedWriting.CountedInside(two.Item) is null ? "nobody was counted, so people may have been inside" : "one of the two was not true")}. Began {Who(begun)}; {(ended is null ? $"NOT ENDED at {Say.Day(site, span.End)}" : $"ended {Who(ended)}{InTurn(two.Item, begun, ended)}")}",
            begun.Seq)
        {
            Evidence =
            [
                "It rests on records alone: an item that nobody closed, or a state that nobody told, explains it as well.",
                "Whoever was at the equipment says which of the two was true; a remark on the record keeps it.",
            ],
        };
    }
}
