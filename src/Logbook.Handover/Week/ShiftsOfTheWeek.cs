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
        var holders = HoldersOfTheWeek.Of(week);
        return NoteSection.Of("shifts", "SHIFTS", week.Shifts.Select(s => new NoteLine(
            $"{s.Date.ToString("ddd d", CultureInfo.InvariantCulture)} {Say.Visible(s.Code)} {Say.Visible(s.Crew)}", $"{ChecksOfTheWeek.Sums([.. checks[s.Id]])}{Load(week.Site, s, checks[s.Id])}; {HoldersOfTheWeek.In(week.Site, holders, s)}; {HandedOver(week, s)}")));
    }

    /// <summary>What the rounds that fell due take of the shift, by the site's own times.</summary>
    private static string Load(Site site, ShiftInstance shift, IEnumerable<DueCheck> checks)
    {
        var minutes = checks.Select(c => (c.Round, c.DueAt)).Distinct().Sum(slot => site.FindRound(slot.Round)?.Takes.TotalMinutes ?? 0);
        var share = minutes / (shift.End - shift.Start).TotalMinutes;
        return minutes == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"; load {minutes:F0} min of rounds, {100 * share:F0} %{(share > Workload.Most ? " OF THE SHIFT" : "")}");
    }

    private static string HandedOver(WeekFacts week, ShiftInstance shift)
    {
        if (week.Span.WithHistory.LastOrDefault(r => AcceptedNote.Closes(shift, r)) is not { Body: HandoverAccepted accepted } record)
        {
            return shift.End > week.Desk.Now ? "still running" : "NOT HANDED OVER BY A NOTE";
        }

        var prepared = week.Span.WithHistory.LastOrDefault(r => r.Seq == accepted.Prepared);
        return $"taken over {Say.Time(week.Site, record.At, shift.End)} by {Say.Person(week.Site, record.By)} from {(accepted.From is { } from ? Say.Person(week.Site, from) : "NOBODY")}"
            + (prepared is null ? "" : $", {Say.Count((int)(record.At - prepared.At).TotalMinutes, "minute")} after it was prepared")
            + (accepted.Unattended is null ? "" : ", UNATTENDED")
            + (accepted.Reservation is null ? "" : ", with a reservation")
            + $" {Say.Ref(record.Seq)}";
    }
}
