using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>One shift: who was due by pattern and roster, and who was there.</summary>
/// <param name="Due">Codes of the people who were due.</param>
/// <param name="Wrote">Codes of the people who wrote something in it.</param>
/// <param name="Took">Codes of the people who took over the line in it.</param>
/// <param name="Worked">Codes of the people who were there for more than its change-overs, or took the line over for it.</param>
/// <param name="Differs">In words, how what happened differs from what was due; null when it does not.</param>
public sealed record ShiftDuty(
    ShiftInstance Shift, IReadOnlyList<string> Due, IReadOnlyList<string> Wrote, IReadOnlyList<string> Took, IReadOnlyList<string> Worked, string? Differs)
{
    // Who comes is there before the shift begins, and who goes writes on after its end. Judgement, no source.
    private static readonly TimeSpan Change = TimeSpan.FromHours(1);

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
        var due = OnShift.DueBy(site, shift, changes);
        var records = desk.Store.Between(shift.Start, shift.End).ToList();
        var wrote = Codes(records.Where(r => site.FindPerson(r.By) is { Role: Role.Operator }));
        var took = Codes(records.Where(IsTaking));
        var there = took.Concat(wrote).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        var strangers = there.Except(due, StringComparer.OrdinalIgnoreCase).Where(code => !IsOfNextTo(site, shift, changes, code, records)).ToList();
        var change = desk.Store.Between(shift.Start - Change, shift.Start).ToList(); // the line is taken shortly before the shift begins
        var before = Codes(change);
        var within = records.Where(r => r.At < shift.End - Change && (IsTaking(r) || (r.At >= shift.Start + Change && site.FindPerson(r.By) is { Role: Role.Operator })));
        var worked = Codes(change.Where(IsTaking).Concat(within));
        var absent = shift.End > desk.Now ? [] : due.Except(there.Concat(before), StringComparer.OrdinalIgnoreCase).ToList();
        return new ShiftDuty(shift, due, wrote, took, worked, Difference(site, shift, desk.Now, strangers, absent));
    }

    private static bool IsTaking(JournalRecord record) => record.Body is HandoverAccepted or HandoverRelief { Mode: not "left" } or HandoverContinued;

    /// <summary>True when all that a person wrote in a shift lies at its ends, beside a shift in which that person was due.</summary>
    private static bool IsOfNextTo(Site site, ShiftInstance shift, IReadOnlyList<RosterChange> changes, string code, List<JournalRecord> records)
    {
        bool IsDue(DateTimeOffset at) => OnShift.DueBy(site, Calendar.ShiftAt(site, at), changes).Contains(code, StringComparer.OrdinalIgnoreCase);
        var (before, after) = (IsDue(shift.Start.AddMinutes(-1)), IsDue(shift.End));
        return records.Where(r => r.By.Equals(code, StringComparison.OrdinalIgnoreCase))
            .All(r => (before && r.Entered < shift.Start + Change) || (after && r.Entered >= shift.End - Change));
    }

    private static IReadOnlyList<RosterChange> RosterChanges(Desk desk, DateTimeOffset from) =>
        // The state keeps those of two months; further back the journal tells.
        from > desk.Now.AddDays(-50) ? desk.State.Roster : [.. desk.Store.Read().Select(r => r.Body).OfType<RosterChange>()];

    private static IReadOnlyList<string> Codes(IEnumerable<JournalRecord> records) => [.. records.Select(r => r.By).Distinct(StringComparer.OrdinalIgnoreCase)];

    private static string? Difference(Site site, ShiftInstance shift, DateTimeOffset now, List<string> strangers, List<string> absent)
    {
        string Names(List<string> codes) => string.Join(", ", codes.Select(c => Say.Person(site, c)));
        string[] parts =
        [
            .. strangers.Count > 0 ? [$"not due but there: {Names(strangers)}"] : Array.Empty<string>(),
            .. absent.Count > 0 ? [$"due, nothing written or signed: {Names(absent)}"] : Array.Empty<string>(),
        ];
        return shift.Start > now || parts.Length == 0 ? null : string.Join("; ", parts);
    }
}
