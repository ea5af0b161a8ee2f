using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>How long a person has worked without a long break. For the supervisor to know; it blocks nothing.</summary>
/// <param name="InARow">Shifts since the last long break, the last of them still running or just over.</param>
/// <param name="Hours">Hours of these shifts, elapsed and not by the wall clock, holdovers included.</param>
/// <param name="Since">When the first of them began.</param>
/// <param name="Longest">Hours of the longest, holdover included.</param>
public sealed record WorkCount(string Person, int InARow, double Hours, DateTimeOffset Since, double Longest)
{
    /// <summary>
    /// A set of shifts ends with a day and a half off. After a published recommendation for refineries (API RP 755: 36 h off
    /// after a set of shifts); the site's own rules go before it.
    /// </summary>
    private static readonly TimeSpan Break = TimeSpan.FromHours(36);

    private static readonly TimeSpan LooksBack = TimeSpan.FromDays(30);

    /// <summary>Everybody whose last set of shifts has not been followed by a long break yet.</summary>
    public static IReadOnlyList<WorkCount> Of(Desk desk)
    {
        var shifts = ShiftDuty.Of(desk, desk.Now - LooksBack, desk.Now);
        return
        [
            .. from person in desk.Site.People
               let worked = Stretches(desk, shifts, person)
               let set = LastSet(worked)
               where set.Count > 0 && desk.Now - set[^1].End < Break
               select new WorkCount(person.Code, set.Count, set.Sum(Length), set[0].Start, set.Max(Length)),
        ];
    }

    private static double Length((DateTimeOffset Start, DateTimeOffset End) stretch) => (stretch.End - stretch.Start).TotalHours;

    /// <summary>The shifts that the person worked, as long as a holdover makes them, and no longer than until now.</summary>
    private static IReadOnlyList<(DateTimeOffset Start, DateTimeOffset End)> Stretches(Desk desk, IReadOnlyList<ShiftDuty> shifts, Person person)
    {
        var stretches = new List<(DateTimeOffset Start, DateTimeOffset End)>();
        foreach (var duty in shifts.Where(s => s.Worked.Contains(person.Code, StringComparer.OrdinalIgnoreCase)))
        {
            // Staying on makes the shift before longer; it is no shift of its own.
            if (stretches.Count > 0 && stretches[^1].End > duty.Shift.Start)
            {
                continue;
            }

            var held = desk.State.Roster.Where(c => c.What == "holdover" && c.Person.Equals(person.Code, StringComparison.OrdinalIgnoreCase)
                && c.From <= duty.Shift.End && c.To > duty.Shift.End && c.From > duty.Shift.Start).Select(c => c.To).DefaultIfEmpty(duty.Shift.End).Max();
            stretches.Add((duty.Shift.Start, held < desk.Now ? held : desk.Now));
        }

        return stretches;
    }

    private static List<(DateTimeOffset Start, DateTimeOffset End)> LastSet(IReadOnlyList<(DateTimeOffset Start, DateTimeOffset End)> worked)
    {
        var first = worked.Count - 1;
        while (first > 0 && worked[first].Start - worked[first - 1].End < Break)
        {
            first--;
        }

        return first < 0 ? [] : [.. worked.Skip(first)];
    }
}
