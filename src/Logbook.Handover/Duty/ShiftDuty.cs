using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>One shift: who was due by pattern and roster, and who was there.</summary>
/// <param name="Due">Codes of the people who were due.</param>
/// <param name="Wrote">Codes of the people who wrote something in it.</param>
/// <param name="Took">Codes of the people who took over the line in it.</param>
/// <param name="Differs">In words, how what happened differs from what was due; null when it does not.</param>
public sealed record ShiftDuty(
    ShiftInstance Shift, IReadOnlyList<string> Due, IReadOnlyList<string> Wrote, IReadOnlyList<string> Took, string? Differs)
{
    /// <summary>
    /// The shifts of a stretch. Each shift is that of the pattern in force in its day; the roster only predicts: who was there
    /// is who signed or wrote.
    /// </summary>
    public static IReadOnlyList<ShiftDuty> Of(Desk desk, DateTimeOffset from, DateTimeOffset to)
    {
        var changes = RosterChanges(desk, from);
        return
        [
            .. SiteInForce.Since(desk, from)
                .SelectMany(force => Shifts(force, from, to).Select(shift => One(desk, force.Site, shift, changes))),
        ];
    }

    /// <summary>The shifts that began while this site was in force.</summary>
    private static IEnumerable<ShiftInstance> Shifts(SiteInForce force, DateTimeOffset from, DateTimeOffset to)
    {
        var (begin, end) = (force.From > from ? force.From : from, force.To < to ? force.To : to);
        return begin >= end ? [] : Calendar.Shifts(force.Site, begin, end).Where(s => s.Start >= force.From || force.From <= from);
    }

    private static ShiftDuty One(Desk desk, Site site, ShiftInstance shift, IReadOnlyList<RosterChange> changes)
    {
        var due = DueBy(site, shift, changes);
        var records = desk.Store.Between(shift.Start, shift.End).ToList();
        var wrote = Codes(records.Where(r => site.FindPerson(r.By) is { Role: Role.Operator }));
        var took = Codes(records.Where(r => r.Body is HandoverAccepted or HandoverRelief { Mode: not "left" } or HandoverContinued));
        return new ShiftDuty(shift, due, wrote, took, Difference(site, shift, desk.Now, due, wrote, took));
    }

    /// <summary>The crew's operators, with swaps, holidays and holdovers applied in the order in which they were entered.</summary>
    public static IReadOnlyList<string> DueBy(Site site, ShiftInstance shift, IEnumerable<RosterChange> changes)
    {
        var due = site.People.Where(p => p.Role == Role.Operator && string.Equals(p.Crew, shift.Crew, StringComparison.OrdinalIgnoreCase)).Select(p => p.Code).ToList();
        foreach (var change in changes.Where(c => c.From < shift.End && c.To > shift.Start))
        {
            due.RemoveAll(code => code.Equals(change.What == "swap" ? change.For : change.What == "holiday" ? change.Person : null, StringComparison.OrdinalIgnoreCase));
            if (change.What is "swap" or "holdover" && !due.Contains(change.Person, StringComparer.OrdinalIgnoreCase))
            {
                due.Add(change.Person);
            }
        }

        return due;
    }

    private static IReadOnlyList<RosterChange> RosterChanges(Desk desk, DateTimeOffset from) =>
        // The state keeps those of two months; further back the journal tells.
        from > desk.Now.AddDays(-50) ? desk.State.Roster : [.. desk.Store.Read().Select(r => r.Body).OfType<RosterChange>()];

    private static IReadOnlyList<string> Codes(IEnumerable<JournalRecord> records) => [.. records.Select(r => r.By).Distinct(StringComparer.OrdinalIgnoreCase)];

    private static string? Difference(
        Site site, ShiftInstance shift, DateTimeOffset now, IReadOnlyList<string> due, IReadOnlyList<string> wrote, IReadOnlyList<string> took)
    {
        if (shift.Start > now)
        {
            return null;
        }

        var strangers = took.Concat(wrote).Distinct(StringComparer.OrdinalIgnoreCase).Except(due, StringComparer.OrdinalIgnoreCase).Select(c => Say.Person(site, c)).ToList();
        var absent = shift.End > now ? [] : due.Except(took.Concat(wrote), StringComparer.OrdinalIgnoreCase).Select(c => Say.Person(site, c)).ToList();
        string[] parts =
        [
            .. strangers.Count > 0 ? [$"not due but there: {string.Join(", ", strangers)}"] : Array.Empty<string>(),
            .. absent.Count > 0 ? [$"due, nothing written or signed: {string.Join(", ", absent)}"] : Array.Empty<string>(),
        ];
        return parts.Length == 0 ? null : string.Join("; ", parts);
    }
}
