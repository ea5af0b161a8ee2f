using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// At most three cautions, for more would not be read: that of people who may be inside, then open hazards, then what is urgent, then other open items and
/// states, then what is to watch; alike ones in the site's order. Standing ones come after them.
/// </summary>
internal static class ChosenCautions
{
    private const int AtMost = 3;

    public static IReadOnlyList<NoteCaution> Of(Site site, State state) =>
    [
        .. site.Cautions.Select(c => (Caution: c, Rank: c.Triggers.Min(t => Rank(site, state, t)))).Where(x => x.Rank is not null).OrderBy(x => x.Rank)
            .Take(AtMost).Select(x => x.Caution)
            .Concat(site.Cautions.Where(c => c.Triggers.Contains("always", StringComparer.Ordinal)))
            .Distinct().Select(Printed),
    ];

    private static NoteCaution Printed(Caution caution) => new(
        Say.Visible(caution.Hazard), Say.Visible(caution.Text), Say.Visible(caution.Ppe), Say.Visible(caution.FirstAid),
        Say.Visible(caution.Source), Say.Visible(caution.Revision), string.IsNullOrWhiteSpace(caution.ApprovedBy));

    /// <summary>Null when the trigger is not there.</summary>
    private static int? Rank(Site site, State state, string trigger)
    {
        var parts = trigger.Split(':', 2);
        var what = parts[^1];
        return parts[0] switch
        {
            "state" when state.Equipment.Values.Any(e => e.State == what) => what == "acid" ? 0 : 2,
            "carry" when state.Carried.FindAll(i => i.ItemKind == what || $"{i.ItemKind}@{AreaOf(site, i.On)}" == what) is { IsEmpty: false } open => open.Exists(i => i.MayBeInside) ? -1 : open.Exists(i => i.IsHazard) ? 0 : 2,
            "area" when state.Equipment.Values.Any(e => !EquipmentHistory.Runs(e.State) && AreaOf(site, e.Equipment) == what) || state.Carried.Exists(i => AreaOf(site, i.On) == what) => 2,
            "limit" when Worst(state, what) is { } worst and >= Level.Watch => worst == Level.Urgent ? 1 : 3,
            _ => null,
        };
    }

    private static string AreaOf(Site site, string on) => site.FindEquipment(on)?.Area ?? on;

    private static Level? Worst(State state, string tag) =>
        state.Findings.GetValueOrDefault(tag) is { IsEmpty: false } findings ? findings.Max(f => f.Finding.Level) : null;
}
