using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>One slot of a round as it stands.</summary>
/// <param name="Done">Checks with a reading or a reason.</param>
/// <param name="Of">Checks that apply.</param>
/// <param name="State">Due while it is open, missed after that; coming for the next check instead of a defeated trip, before it can be made.</param>
public sealed record RoundNow(string Round, string Title, DateTimeOffset DueAt, DateTimeOffset Opens, DateTimeOffset Closes, int Done, int Of, CheckState State)
{
    /// <summary>That values were typed for missed checks only later, when, and the entries; empty when none were.</summary>
    public string SaidLater { get; init; } = "";

    /// <summary>The slots of a shift that are open or have missed checks, the open ones first.</summary>
    /// <param name="checks">All that fell due in it.</param>
    internal static IReadOnlyList<RoundNow> InShift(Site site, IReadOnlyList<DueCheck> checks) =>
    [
        .. checks.GroupBy(c => (c.Round, c.DueAt)).Select(slot => Slot(site, [.. slot])).OfType<RoundNow>()
            .OrderBy(r => r.State).ThenBy(r => r.DueAt),
    ];

    /// <summary>What is to be read next instead of each defeated trip, where nothing of it is open now: a shift change does not hide it.</summary>
    internal static IEnumerable<RoundNow> NextInstead(Desk desk, IReadOnlyList<RoundNow> inShift) =>
        from next in InsteadOfTrips.Next(desk)
        let round = InsteadOfTrips.RoundId(next.Item.Id)
        where !inShift.Any(r => r.Round == round && r.State == CheckState.Due)
        select new RoundNow(round, InsteadOfTrips.Title(desk.Site, round), next.DueAt, next.Opens, next.Closes, 0, 1, next.Opens <= desk.Now ? CheckState.Due : CheckState.Coming);

    private static string Later(Site site, List<DueCheck> typed) =>
        typed.Count == 0 ? "" : $"said later {Say.Time(site, typed[^1].Answer!.Entered, typed[^1].DueAt)} {Say.Ref(typed.Select(c => c.Seq!.Value).Distinct())}";

    private static RoundNow? Slot(Site site, List<DueCheck> slot)
    {
        var applies = slot.Where(c => c.State != CheckState.NotApplicable).ToList();
        var open = applies.Exists(c => c.State == CheckState.Due);
        return open || applies.Exists(c => c.State == CheckState.Missed)
            ? new RoundNow(
                slot[0].Round, InsteadOfTrips.Title(site, slot[0].Round) + (slot.Exists(c => c.Upset) ? ", safety points in the upset" : ""), slot[0].DueAt, slot[0].Opens, slot[0].Closes,
                applies.Count(c => c.State is CheckState.Done or CheckState.Late or CheckState.NotTaken), applies.Count,
                open ? CheckState.Due : CheckState.Missed) { SaidLater = Later(site, applies.FindAll(c => c.TypedLater)) }
            : null;
    }
}
