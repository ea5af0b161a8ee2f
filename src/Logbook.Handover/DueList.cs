using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

public enum CheckState { Coming, Due, Done, Late, NotTaken, Missed, NotApplicable }

/// <summary>One point of one slot of a round: what became of the check. Derived, never stored.</summary>
/// <param name="Seq">The entry that answered it; of one that does not apply the entry that said it was not taken.</param>
/// <param name="Why">Reason when it was not taken or does not apply; for a late one when it was read or typed.</param>
public sealed record DueCheck(
    string Round, string Point, DateTimeOffset DueAt, DateTimeOffset Opens, DateTimeOffset Closes, CheckState State,
    string ShiftId, long? Seq, DateTimeOffset? TakenAt, string? By, string? Why)
{
    /// <summary>True when it does not apply because of an upset.</summary>
    public bool Upset { get; init; }

    /// <summary>The record by which it does not apply, when that was typed only after its window had closed: it was not walked, and nobody had said why.</summary>
    public long? SaidLater { get; init; }
}

/// <summary>Which checks are due, done, late, not taken, missed or not applicable. Follows from the journal and the schedule in force.</summary>
public static class DueList
{
    /// <summary>Every check that falls due in [from, to), by due time, round and walking order.</summary>
    public static IReadOnlyList<DueCheck> Between(Desk desk, DateTimeOffset from, DateTimeOffset to) => Between(desk, from, to, JournalSpan.Touching);

    /// <param name="touching">Gives the records that may speak of a stretch: an audit has read them already.</param>
    internal static IReadOnlyList<DueCheck> Between(Desk desk, DateTimeOffset from, DateTimeOffset to, Func<Desk, DateTimeOffset, DateTimeOffset, IReadOnlyList<JournalRecord>> touching)
    {
        var begun = JournalSpan.Begin(desk);
        var sheets = SiteInForce.Since(desk, from).SelectMany(s => s.Site.Rounds.Select(r => new RoundSheet(s, r, from, to))).ToList();
        var (opens, closes) = (sheets.Min(s => s.Opens) ?? from, sheets.Max(s => s.Closes) ?? to);
        var records = touching(desk, opens < from ? opens : from, closes > to ? closes : to);
        var then = JournalSpan.StateAt(desk, to);
        var instead = InsteadOfTrips.Sheets(desk, then, records, from, to).ToList();
        var byPoint = sheets.SelectMany(s => s.Points.Select(p => (p, s))).ToLookup(x => x.p, x => x.s, StringComparer.OrdinalIgnoreCase);
        foreach (var answer in Answer.All(records))
        {
            Place([.. byPoint[answer.Point]], answer);
            PlaceInstead(instead, answer);
        }

        var around = Circumstances.Of(desk, then, records, from);
        return [.. sheets.Concat(instead).SelectMany(s => s.Checks(from, to, begun, desk.Now, around)).OrderBy(c => c.DueAt)];
    }

    /// <summary>What is read instead of a defeated trip counts for that as well, whatever it was read for.</summary>
    private static void PlaceInstead(List<RoundSheet> instead, Answer answer)
    {
        foreach (var sheet in instead.Where(s => s.Has(answer.Point)))
        {
            if (sheet.Nearest(answer.CountsAt) is >= 0 and var slot)
            {
                sheet.Put(slot, answer);
            }
        }
    }

    /// <summary>A reading answers one slot at most: of the round that it was typed for, else of the round whose slot is nearest.</summary>
    /// <param name="sheets">Those that ask for its point.</param>
    private static void Place(List<RoundSheet> sheets, Answer answer)
    {
        var own = sheets.FindAll(s => s.Is(answer.Round));
        var nearest = (own.Count > 0 ? own : sheets)
            .Select(s => (Sheet: s, Slot: s.Nearest(answer.CountsAt)))
            .Where(x => x.Slot >= 0)
            .OrderBy(x => x.Sheet.Away(x.Slot, answer.CountsAt))
            .ThenBy(x => x.Sheet.Slots[x.Slot].DueAt)
            .FirstOrDefault();
        nearest.Sheet?.Put(nearest.Slot, answer);
    }
}
