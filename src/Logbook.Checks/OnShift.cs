using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>Who is due in a shift, by its crew and the roster.</summary>
public static class OnShift
{
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
}
