using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>One standing order and one person.</summary>
/// <param name="SeenAt">When the person read it; null when not yet.</param>
public sealed record OrderRow(long Id, string Person, DateTimeOffset? SeenAt, DateTimeOffset Since, string By, DateTimeOffset? Until, string Text)
{
    /// <summary>That it was withdrawn: when, by whom, why; null while it stands.</summary>
    public Withdrawal? Withdrawn { get; init; }

    /// <summary>Every order that stands with every operator and supervisor of the site, who reads it and who has not.</summary>
    /// <param name="withdrawn">Those too that were withdrawn in the last two weeks.</param>
    public static IReadOnlyList<OrderRow> Of(Desk desk, bool withdrawn = false) =>
    [
        .. from order in desk.State.Orders
           where order.HoldsAt(desk.Now) || (withdrawn && order.Withdrawn is not null)
           from person in desk.Site.People
           where person.Role != Plant.Role.Engineer || order.Seen.ContainsKey(person.Code)
           select new OrderRow(
               order.Id, person.Code, order.Seen.TryGetValue(person.Code, out var at) ? at : null, order.Since, order.By, order.Until, order.Text) { Withdrawn = order.Withdrawn },
    ];
}
