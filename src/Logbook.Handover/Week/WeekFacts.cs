using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What the week note is drawn from, each part read once.</summary>
/// <param name="Shift">The week's facts as of one long shift.</param>
internal sealed record WeekFacts(Desk Desk, Site Site, DateTimeOffset From, DateTimeOffset To, AuditSpan Span, ShiftFacts Shift, IReadOnlyList<ShiftInstance> Shifts)
{
    private const int Days = 7;

    /// <summary>The seven days that end with <paramref name="last"/>, by the wall clock: longer or shorter by an hour when that changes.</summary>
    public static WeekFacts Of(Desk desk, Site site, ShiftInstance last)
    {
        var from = Calendar.AtSite(site, Calendar.ToSite(site, last.End).DateTime.AddDays(-Days));
        var begun = JournalSpan.Begin(desk);
        return new WeekFacts(
            desk, site, from, last.End, new AuditSpan(desk, from, last.End), ShiftFacts.Over(desk, site, from, last),
            [.. Calendar.Shifts(site, from, last.End).Where(s => s.Start < desk.Now && s.End > begun)]);
    }

    /// <summary>A day and time of the week, in words.</summary>
    public string Day(DateTimeOffset at) => Say.Day(Site, at);
}
