using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>Standing orders, and notes to other departments.</summary>
public static partial class Writing
{
    public static Written GiveOrder(Desk desk, string text, DateTimeOffset? until, string by) => Write(desk, by,
        _ => [.. Given.Text(text, "the order"), .. until <= desk.Now ? Of("the order would have ended already", "an end in the future, or none") : []],
        _ => (new OrderGiven(text.Trim(), until), desk.Now));

    /// <summary>The writer has read the order; once is enough.</summary>
    public static Written SeeOrder(Desk desk, long id, string by) => Write(desk, by, _ =>
    {
        if (desk.State.Orders.Find(o => o.Id == id && o.EndIsNewTo(by)) is not null)
        {
            return [];
        }

        return Standing(desk, id) is not { } order ? NoOrder(desk, id)
            : order.Seen.TryGetValue(by, out var at) ? Of($"{by} has read order {id} already", "at " + Words.Time(at)) : [];
    },
    _ => (new OrderSeen(id), desk.Now));

    /// <summary>Ends an order that stands, as a record of its own: who gave it does, an engineer or a supervisor.</summary>
    public static Written WithdrawOrder(Desk desk, long id, string why, string by) => Write(desk, by,
        _ => [.. Given.Text(why, "why it is withdrawn"), .. Standing(desk, id) is not { } order ? NoOrder(desk, id) : NotTheirs(desk.Site, order, by) is { } not ? [not] : []],
        _ => (new OrderWithdrawn(id, why.Trim()), desk.Now));

    /// <summary>Why this person does not withdraw that order; null for who gave it, an engineer or a supervisor.</summary>
    public static Mistake? NotTheirs(Site site, StandingOrder order, string by) =>
        site.FindPerson(by) is { Role: Role.Operator } person && !person.Code.Equals(order.By, StringComparison.OrdinalIgnoreCase)
            ? Mistake.Typed($"order {order.Id} is not withdrawn by {person.Code}", $"{order.By}, who gave it, an engineer or a supervisor withdraws it")
            : null;

    private static StandingOrder? Standing(Desk desk, long id) => desk.State.Orders.Find(o => o.Id == id && o.HoldsAt(desk.Now));

    private static IEnumerable<Mistake> NoOrder(Desk desk, long id)
    {
        var standing = desk.State.Orders.Where(o => o.HoldsAt(desk.Now)).Select(o => o.Id).ToList();
        return Of($"no standing order {id}", standing.Count == 0 ? "none stands" : "standing: " + string.Join(", ", standing));
    }

    public static Written TellDepartment(Desk desk, string department, string text, string by) => Write(desk, by,
        _ => [.. Given.Text(department, "the department"), .. Given.Text(text, "the note")],
        _ => (new DepartmentNote(department.Trim(), text.Trim(), null, null), desk.Now));

    /// <summary>A named person of the department has taken the note.</summary>
    public static Written Acknowledge(Desk desk, long id, string name, string answer, string by) => Write(desk, by, _ =>
    [
        .. Given.Text(name, "the name of the person who acknowledged"),
        .. desk.State.Departments.Exists(n => n.Id == id) ? [] : Of(
            $"no note {id} waits for an acknowledgement",
            desk.State.Departments.IsEmpty ? "none waits" : "waiting: " + string.Join(", ", desk.State.Departments.Select(n => $"{n.Id} to {n.To}"))),
    ],
    _ => (new DepartmentNote(null, answer.Trim(), id, name.Trim()), desk.Now));
}
