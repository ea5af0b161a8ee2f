using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>
/// What changed since a person was last here, for a page that is read in a minute: worst first, what is of one kind in one line
/// each. What can hurt and what is not normal now stand in full on the page before; the records are named.
/// </summary>
internal static class SinceInShort
{
    public static IEnumerable<NoteLine> Lines(Desk desk, IReadOnlyList<Change> changes)
    {
        var site = desk.Site;
        var hazards = desk.State.Carried.Where(i => i.IsHazard).Select(i => i.Id).ToHashSet();
        string At(Change c) => $"{Say.Time(site, c.At, desk.Now)} {Say.Ref(c.Seq)}";
        string Place(Change c) => c.On.Length == 0 ? "" : Say.Equipment(site, c.On) + " ";
        string Found(Change c) => $"{Visible(c.Finding!.Point)}{Say.Visible(FindingText.WithoutAsking(site, c.Finding))} {At(c)}{(c.Lesser is null ? "" : $", NOW WATCH: {Say.Visible(FindingText.AtLeast(site, c.Lesser))}")}";
        string InWords(Change c) => $"{Say.Visible(c.Text).TrimEnd('.')} {At(c)}";
        bool Urgent(Change c) => c is { Finding: not null, What: "urgent" };
        (string Label, Func<Change, bool> Is, Func<Change, string> Words)[] kinds =
        [
            ("can hurt", c => c.What is "opened" or "changed" && hazards.Contains(ItemOf(desk, c)), c => $"{Kind(desk, c)}, {Place(c)}{At(c)}"),
            ("upset", c => c.What == "upset", InWords),
            ("URGENT", c => Urgent(c) && c.Stands, Found),
            ("was urgent", c => Urgent(c) && !c.Stands, Found),
            ("ended", c => c.What == "closed", c => $"{Kind(desk, c)}, {Place(c)}{At(c)}"),
            ("orders", c => c.What is "order" or "site", InWords),
            ("watch", c => c.Finding is not null && c.Stands, c => $"{Visible(c.Finding!.Point)}{Say.Visible(FindingText.AtLeast(site, c.Finding))} {At(c)}"),
            ("states", c => c.What == "state", c => $"{Place(c)}{State(desk, c)} {At(c)}"),
            ("opened", c => c.What is "opened" or "changed", c => $"{Kind(desk, c)}, {Place(c)}{At(c)}"),
            ("told", c => c.What == "department", InWords),
            ("over", c => c.Finding is not null, c => $"{Visible(c.Finding!.Point).TrimEnd(':', ' ')} {At(c)}"),
        ];
        var left = changes.OrderBy(c => c.At).ThenBy(c => c.Seq).ToList();
        foreach (var (label, belongs, words) in kinds)
        {
            var these = left.FindAll(c => belongs(c));
            left = [.. left.Except(these)];
            if (these.Count > 0)
            {
                yield return new NoteLine(label, string.Join("; ", these.Select(words)));
            }
        }
    }

    private static string State(Desk desk, Change change) =>
        desk.Store.Read(change.Seq).FirstOrDefault()?.Body is EquipmentStateChanged state ? Say.Visible(state.State) : "";

    private static string Visible(string? tag) => tag is null ? "" : Say.Visible(tag) + ": ";

    /// <summary>The item that was opened, changed or closed; the record itself for any other change.</summary>
    private static long ItemOf(Desk desk, Change change) => desk.Store.Read(change.Seq).FirstOrDefault()?.Body switch
    {
        CarryConfirmed look => look.Id,
        CarryClosed closed => closed.Id,
        _ => change.Seq,
    };

    private static string Kind(Desk desk, Change change) =>
        desk.Store.Read(ItemOf(desk, change)).FirstOrDefault()?.Body is Carry carry ? $"{Say.Kind(carry.ItemKind)}{(change.What == "changed" ? " changed" : "")}" : change.What;
}
