using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A round with what the journal has of it already.</summary>
internal static class RoundAtHand
{
    public static RoundOpened Find(Desk desk, OpenRound open)
    {
        List<DueCheck> checks = open.Slot is { } slot ? [.. DueList.Between(desk, slot.DueAt, slot.DueAt.AddTicks(1)).Where(c => c.Round == slot.Round)] : [];
        return new RoundOpened(open.Round, open.Slot, Saved(desk, checks.Where(c => c.Seq is not null)), open.Second)
        {
            Resting = checks.Where(c => c.State == CheckState.NotApplicable).DistinctBy(c => c.Point, StringComparer.OrdinalIgnoreCase).ToDictionary(c => c.Point, c => c.Why ?? "not asked for now", StringComparer.OrdinalIgnoreCase),
        };
    }

    /// <summary>What a check was answered with; of several readings of its window the newest, each as it was put right.</summary>
    private static Dictionary<string, SavedReading> Saved(Desk desk, IEnumerable<DueCheck> answered)
    {
        var saved = new Dictionary<string, SavedReading>(StringComparer.OrdinalIgnoreCase);
        foreach (var check in answered)
        {
            var from = check.TakenAt ?? check.Opens;
            var end = check.Closes > from ? check.Closes : from;
            if (desk.Store.Series(check.Point, from, end.AddMilliseconds(1)) is [.., var newest])
            {
                saved[check.Point] = new SavedReading(newest.Seq, newest.Value is null ? "-" : newest.Typed ?? "-", newest.Why, newest.At) { Findings = Open(desk, newest.Seq) };
            }
        }

        return saved;
    }

    private static IReadOnlyList<Finding> Open(Desk desk, long seq) =>
        [.. desk.State.Findings.Values.SelectMany(f => f).Where(o => o.Seq == seq || o.Corrects == seq).Select(o => o.Finding).OrderByDescending(f => f.Level)];
}
