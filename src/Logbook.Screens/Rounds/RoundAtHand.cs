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

    private static Dictionary<string, SavedReading> Saved(Desk desk, IEnumerable<DueCheck> answered)
    {
        var saved = new Dictionary<string, SavedReading>(StringComparer.OrdinalIgnoreCase);
        foreach (var record in answered.GroupBy(c => c.Seq!.Value))
        {
            var open = Open(desk, record.Key);
            var points = record.Select(c => c.Point).ToHashSet(StringComparer.OrdinalIgnoreCase);
            foreach (var reading in ((Entry)desk.Store.Read(record.Key).First().Body).Readings.Where(r => points.Contains(r.Point)))
            {
                var typed = desk.State.Latest.TryGetValue(reading.Point, out var latest) && latest.Seq == record.Key ? latest.Typed : reading.Typed; // corrections applied
                saved[reading.Point] = new SavedReading(record.Key, typed ?? "-", reading.Why, reading.At) { Findings = open };
            }
        }

        return saved;
    }

    private static IReadOnlyList<Finding> Open(Desk desk, long seq) =>
        [.. desk.State.Findings.Values.SelectMany(f => f).Where(o => o.Seq == seq).Select(o => o.Finding).OrderByDescending(f => f.Level)];
}
