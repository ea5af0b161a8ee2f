using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

public enum CheckState { Coming, Due, Done, Late, NotTaken, Missed, NotApplicable }

/// <summary>One point of one slot of a round: what became of the check. Derived, never stored.</summary>
/// <param name="Why">Reason when it was not taken or does not apply; for a late one when it was read or typed; for a missed one the upset that was declared afterwards, or what was typed for it all the same.</param>
public sealed record DueCheck(string Round, string Point, Slot Slot, CheckState State, string? Why)
{
    public DateTimeOffset DueAt => Slot.DueAt;

    public DateTimeOffset Opens => Slot.Opens;

    public DateTimeOffset Closes => Slot.Closes;

    public string ShiftId => Slot.Shift.Id;

    /// <summary>The entry that answered it; of one that does not apply the entry that said it was not taken.</summary>
    public long? Seq => Answer?.Seq;

    public DateTimeOffset? TakenAt => IsAnswered ? Answer?.TakenAt : null;

    public string? By => IsAnswered ? Answer?.By : null;

    /// <summary>True when it does not apply because of an upset.</summary>
    public bool Upset { get; init; }

    /// <summary>
    /// The record that was typed only after its window had closed: equipment at rest, by which it does not apply, or an upset, by
    /// which it stays missed. It was not walked, and nobody had said why.
    /// </summary>
    public long? SaidLater { get; init; }

    /// <summary>True when a value was typed for it, taken back, and never followed by another.</summary>
    public bool TakenBack { get; init; }

    /// <summary>
    /// True when a value was typed for it only after its window had closed. A check for safety stays missed by that, whatever time
    /// the value is said to be of: nobody could go by it when it was due.
    /// </summary>
    public bool TypedLater => this is { State: CheckState.Missed, Answer.Taken: true };

    internal Answer? Answer { get; init; }

    private bool IsAnswered => TypedLater || State is CheckState.Done or CheckState.Late or CheckState.NotTaken;
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
        var byPoint = sheets.SelectMany(s => s.Points.Select(p => (p, s))).GroupBy(x => x.p, x => x.s, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(g => g.Key, g => g.ToList(), StringComparer.OrdinalIgnoreCase);
        foreach (var answer in Answer.All(records))
        {
            Place(byPoint.GetValueOrDefault(answer.Point, []), answer);
            PlaceInstead(instead, answer);
        }

        var around = Circumstances.Of(desk, then, records, from);
        return [.. sheets.Concat(instead).SelectMany(s => s.Rows(from, to, begun).Select(row => (Sheet: s, Row: row)))
            .OrderBy(x => x.Sheet.Slots[x.Row].DueAt).SelectMany(x => x.Sheet.Checks(x.Row, desk.Now, around))];
    }

    /// <summary>What is read instead of a defeated trip counts for that as well, whatever it was read for.</summary>
    private static void PlaceInstead(List<RoundSheet> instead, Answer answer)
    {
        foreach (var sheet in instead)
        {
            if (sheet.Has(answer.Point) && sheet.Nearest(answer.CountsAt) is >= 0 and var slot)
            {
                sheet.Put(slot, answer);
            }
        }
    }

    /// <summary>
    /// A reading answers one slot at most: of the round that it was typed for, else of the round whose slot is nearest, of two as
    /// near the earlier. A plain loop: years have a million readings.
    /// </summary>
    /// <param name="sheets">Those that ask for its point.</param>
    private static void Place(List<RoundSheet> sheets, Answer answer)
    {
        var own = answer.Round is not null && sheets.Exists(s => s.Is(answer.Round));
        (RoundSheet Sheet, int Slot, (TimeSpan Away, DateTimeOffset DueAt) Order)? nearest = null;
        foreach (var sheet in sheets)
        {
            if ((!own || sheet.Is(answer.Round)) && sheet.Nearest(answer.CountsAt) is >= 0 and var slot)
            {
                var order = (sheet.Away(slot, answer.CountsAt), sheet.Slots[slot].DueAt);
                nearest = nearest is { } best && best.Order.CompareTo(order) <= 0 ? nearest : (sheet, slot, order);
            }
        }

        nearest?.Sheet.Put(nearest.Value.Slot, answer);
    }
}
