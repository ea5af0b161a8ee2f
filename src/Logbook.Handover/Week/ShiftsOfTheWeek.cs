using System.Globalization;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Each shift in a line: its checks, and how the line was handed over at its end.</summary>
internal static class ShiftsOfTheWeek
{
    public static NoteSection Of(WeekFacts week)
    {
        var checks = ChecksOfTheWeek.Applying(week).ToLookup(c => c.ShiftId, StringComparer.Ordinal);
        return NoteSection.Of("shifts", "SHIFTS", week.Shifts.Select(s => new NoteLine(
            $"{s.Date.ToString("ddd d", CultureInfo.InvariantCulture)} {Say.Visible(s.Code)} {Say.Visible(s.Crew)}", $"{ChecksOfTheWeek.Sums([.. checks[s.Id]])}; {HandedOver(week, s)}")));
    }

    private static string HandedOver(WeekFacts week, ShiftInstance shift)
    {
        if (week.Span.WithHistory.LastOrDefault(r => AcceptedNote.Closes(shift, r)) is not { Body: HandoverAccepted accepted } record)
        {
            return shift.End > week.Desk.Now ? "still running" : "NOT HANDED OVER BY A NOTE";
        }

        var prepared = week.Span.WithHistory.LastOrDefault(r => r.Seq == accepted.Prepared);
        return $"taken over {Say.Time(week.Site, record.At, shift.End)}"
            + (prepared is null ? "" : $", {Say.Count((int)(record.At - prepared.At).TotalMinutes, "minute")} after it was prepared")
            + (accepted.Unattended is null ? "" : ", UNATTENDED")
            + (accepted.Reservation is null ? "" : ", with a reservation")
            + $" {Say.Ref(record.Seq)}";
    }
}
