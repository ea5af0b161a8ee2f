using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>The records that a person writes beside entries. Each checks what was given and appends one record.</summary>
public static partial class Writing
{
    /// <summary>The folder's files as they are put in force, with what they change; only when <see cref="WhyNotAdopt"/> finds nothing.</summary>
    public static SiteAdopted Adopted(Desk desk, string why) => Adopting.Body(desk, why);

    /// <summary>Why these files cannot be put in force; empty when they can.</summary>
    public static IEnumerable<Mistake> WhyNotAdopt(Desk desk, string why, string by) => Adopting.Mistakes(desk, desk.Site, why, by);

    /// <summary>
    /// Puts readings of entry <paramref name="target"/> right at once, or takes them back ('-'): its results and findings are run
    /// again with its day's limits and inputs.
    /// </summary>
    public static Written Correct(Desk desk, long target, IReadOnlyList<TypedReading> readings, string why, string by) => Correcting.Correct(desk, target, readings, why, by);

    /// <summary>The same for one reading.</summary>
    public static Written Correct(Desk desk, long target, TypedReading reading, string why, string by) => Correct(desk, target, [reading], why, by);

    public static Written Remark(Desk desk, string text, string? on, long? related, string by) => Write(desk, by, site =>
    [
        .. Given.Text(text, "the remark"),
        .. on is null ? [] : Given.EquipmentOrArea(site, on),
        .. related is null || (related >= 1 && related <= desk.State.Head.Seq) ? [] : Of($"there is no record {related}", $"1 to {desk.State.Head.Seq}"),
    ],
    site => (new Remark(text.Trim(), on is null ? null : Given.Code(site, on), related), desk.Now));

    public static Written ChangeState(Desk desk, string equipment, string state, DateTimeOffset? since, string? why, string by) => Write(desk, by, site =>
    [
        .. Given.Equipment(site, equipment),
        .. EquipmentStates.All.Contains(state, StringComparer.OrdinalIgnoreCase) ? [] : Of($"'{state}' is no state of equipment", "accepted: " + string.Join(", ", EquipmentStates.All)),
        .. Given.NotInFuture(since, "the time since when", desk.Now, Place.Unknown),
        .. Given.NotTooLong(why, "the reason", Place.Unknown),
    ],
    site =>
    {
        var from = Given.Instant(site, since ?? desk.Now);
        var name = EquipmentStates.All.First(s => s.Equals(state, StringComparison.OrdinalIgnoreCase));
        return (new EquipmentStateChanged(Given.Code(site, equipment), name, from, string.IsNullOrWhiteSpace(why) ? null : why.Trim()), from);
    });

    /// <summary>Why the site's own plug-in cannot be trusted by this person; empty when it can. Only an engineer may.</summary>
    public static IEnumerable<Mistake> WhyNotTrust(Desk desk, string why, string by) =>
    [
        .. Given.Text(why, "the reason for trusting"),
        .. Given.Engineer(desk.Site, by, "trusts plug-ins"),
    ];

    /// <summary>The one way of these records: everything is checked, then written, or nothing is.</summary>
    internal static Written Write(Desk desk, string by, Func<Site, IEnumerable<Mistake>> check, Func<Site, (RecordBody Body, DateTimeOffset At)> make)
    {
        desk.Follow();
        if (desk.NotReady is { Count: > 0 } notReady)
        {
            return Written.Nothing(notReady);
        }

        var site = desk.Site;
        List<Mistake> mistakes = [.. Given.Writer(site, desk.State, by), .. check(site)];
        if (mistakes.Count > 0)
        {
            return Written.Nothing(mistakes);
        }

        var (body, at) = make(site);
        return Written.Saved(desk.Write(body, at, site.FindPerson(by)!.Code));
    }

    internal static IEnumerable<Mistake> Of(string wrong, string accepted) => [Mistake.Typed(wrong, accepted)];
}
