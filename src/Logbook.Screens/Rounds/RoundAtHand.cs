using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A round with what the journal has of it already.</summary>
internal static class RoundAtHand
{
    public static RoundOpened Find(Desk desk, OpenRound open) => new(
        open.Round, open.Slot, open.Slot is null ? new Dictionary<string, SavedReading>(StringComparer.OrdinalIgnoreCase) : Saved(desk, open.Slot), open.Second);

    private static Dictionary<string, SavedReading> Saved(Desk desk, RoundNow slot)
    {
        var answered = DueList.Between(desk, slot.DueAt, slot.DueAt.AddTicks(1)).Where(c => c.Round == slot.Round && c.Seq is not null);
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
