using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A round with what the journal has of it already.</summary>
internal static class RoundAtHand
{
    public static RoundOpened Find(Desk desk, string id)
    {
        var round = desk.Site.FindRound(id) ?? throw new InvalidOperationException($"no round {id}");
        var slot = NowView.Of(desk).Rounds.FirstOrDefault(r => r.Round == round.Id && r.State == CheckState.Due);
        return new RoundOpened(round, slot, slot is null ? new Dictionary<string, SavedReading>(StringComparer.OrdinalIgnoreCase) : Saved(desk, slot));
    }

    private static Dictionary<string, SavedReading> Saved(Desk desk, RoundNow slot)
    {
        var answered = DueList.Between(desk, slot.DueAt, slot.DueAt.AddTicks(1)).Where(c => c.Round == slot.Round && c.Seq is not null);
        var saved = new Dictionary<string, SavedReading>(StringComparer.OrdinalIgnoreCase);
        foreach (var record in answered.GroupBy(c => c.Seq!.Value))
        {
            var points = record.Select(c => c.Point).ToHashSet(StringComparer.OrdinalIgnoreCase);
            foreach (var reading in ((Entry)desk.Store.Read(record.Key).First().Body).Readings.Where(r => points.Contains(r.Point)))
            {
                saved[reading.Point] = new SavedReading(record.Key, reading.Typed ?? "-", reading.Why, reading.At);
            }
        }

        return saved;
    }
}
