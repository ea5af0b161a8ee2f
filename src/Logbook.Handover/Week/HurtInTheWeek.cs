using System.Globalization;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What can hurt at the week's end and could in the week, as the last shift declared it; which shifts declared nothing is said by name.</summary>
internal static class HurtInTheWeek
{
    // The others stand in the section of the shifts.
    private const int Named = 3;

    public static NoteSection Of(WeekFacts week)
    {
        var undeclared = week.Shifts.Reverse().Where(s => DeclaredBy(week, s) is null).ToList();
        var last = week.Shifts.Count == 0 ? null : DeclaredBy(week, week.Shifts[^1]);
        var section = CanHurt.Of(week.Shift with { Declared = last });
        var named = Names(week, undeclared);
        IReadOnlyList<NoteLine> lines = undeclared.Count == 0 ? section.Lines
            : last is null ? [.. section.Lines.Select(l => l.Label == "others" ? l with { Text = $"{l.Text} by {named}" } : l)]
            : [.. section.Lines, new NoteLine("undeclared", named)];
        return section with { Lines = lines, Beside = "at the week's end, as recorded; lock board and permit office rule" };
    }

    /// <summary>The declaration of the note by which a shift was handed over, or that is in hand; null when there is none.</summary>
    private static Declaration? DeclaredBy(WeekFacts week, ShiftInstance shift)
    {
        var accepted = week.Span.WithHistory.LastOrDefault(r => AcceptedNote.Closes(shift, r))?.Body as HandoverAccepted;
        return accepted is null ? (ShiftInHand.Of(week.Desk).Id == shift.Id ? Declaration.Of(week.Desk) : null)
            : accepted.Prepared is { } seq && week.Desk.Store.Read(seq).First() is { Body: HandoverPrepared body } record
                ? new Declaration(body.Declared, record.By, record.At) { Seq = record.Seq, Changes = body.Changes } : null;
    }

    /// <summary><c>shift D of Mon 30 Nov, still running; shift N of Sun 29 Nov; and 4 before, see SHIFTS</c>.</summary>
    private static string Names(WeekFacts week, List<ShiftInstance> shifts) => string.Join("; ", shifts.Take(Named)
        .Select(s => $"shift {Say.Visible(s.Code)} of {s.Date.ToString("ddd d MMM", CultureInfo.InvariantCulture)}{(s.End > week.Desk.Now ? ", still running" : "")}")
        .Append(shifts.Count > Named ? $"and {Say.Count(shifts.Count - Named, "other")}, see SHIFTS" : "").Where(w => w.Length > 0));
}
