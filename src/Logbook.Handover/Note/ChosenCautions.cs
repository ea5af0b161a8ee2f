using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>At most three cautions: what is open before what is out of limits, then in the site's order. More would not be read.</summary>
internal static class ChosenCautions
{
    private const int AtMost = 3;

    public static IReadOnlyList<NoteCaution> Of(Site site, State state) =>
    [
        .. site.Cautions.Select(c => (Caution: c, Rank: Rank(state, c.Trigger))).Where(x => x.Rank is not null).OrderBy(x => x.Rank).Take(AtMost)
            .Select(x => new NoteCaution(
                Say.Visible(x.Caution.Hazard), Say.Visible(x.Caution.Text), Say.Visible(x.Caution.Ppe), Say.Visible(x.Caution.FirstAid),
                Say.Visible(x.Caution.Source), Say.Visible(x.Caution.Revision), string.IsNullOrWhiteSpace(x.Caution.ApprovedBy))),
    ];

    /// <summary>Null when the trigger is not there.</summary>
    private static int? Rank(State state, string trigger)
    {
        var (kind, _, what) = (trigger.Split(':')[0], ':', trigger.Contains(':', StringComparison.Ordinal) ? trigger[(trigger.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim() : "");
        return kind switch
        {
            "state" when state.Equipment.Values.Any(e => e.State == what) => 0,
            "carry" when state.Carried.Exists(i => i.ItemKind == what) => 0,
            "limit" when Worst(state, what) is { } worst and >= Level.Watch => worst == Level.Urgent ? 1 : 2,
            "always" => 3,
            _ => null,
        };
    }

    private static Level? Worst(State state, string tag) =>
        state.Findings.GetValueOrDefault(tag) is { IsEmpty: false } findings ? findings.Max(f => f.Finding.Level) : null;
}
