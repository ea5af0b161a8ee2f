using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>A supervisor signs that a refused, unattended or emergency handover was looked at, within the shift.</summary>
public static class Countersigning
{
    /// <param name="target">The handover's record; the one that waits when null, and refused when more than one does.</param>
    public static Handed Countersign(Desk desk, SignWith sign, string by, long? target, string why)
    {
        ToCountersign? open = null;
        var handed = Handed.Step(
            desk, by,
            () => [.. Given.Text(why, "what was found"), .. Find(desk, target, out open)],
            () => desk.Site.FindPerson(by) is not { Role: Role.Supervisor } ? "only a supervisor countersigns: " + InCharge.Supervisors(desk)
                : Handed.Same(open!.By, by) ? "who took part does not countersign"
                : null,
            () =>
            {
                var (signed, refused) = Signing.Sign(desk, sign, by, Signing.Countersigned, open!.By);
                return signed is null ? (null, refused) : (new HandoverCountersigned(open.Seq, why.Trim(), signed), null);
            });
        return handed.Record is null ? handed : handed with { Beside = $"signed for: {Words(desk.Site, open!)}" };
    }

    /// <summary>What is to be signed, in one line: <c>refused handover, Operator two Tue 24 Nov 19:02 (#31)</c>.</summary>
    public static string Words(Site site, ToCountersign open) => $"{open.What} handover, {Say.Person(site, open.By)} {Say.Day(site, open.At)} {Say.Ref(open.Seq)}";

    /// <summary>A signature must not fall on another one than was meant.</summary>
    private static List<Mistake> Find(Desk desk, long? target, out ToCountersign? open)
    {
        var all = desk.State.Line.ToCountersign;
        var meant = target is null ? all : all.FindAll(t => t.Seq == target);
        open = meant is [var one] ? one : null;
        var known = all.IsEmpty ? "none is open" : string.Join("; ", all.Select(t => $"{t.Seq}: {Words(desk.Site, t)}"));
        return open is not null ? []
            : [Mistake.Typed(meant.Count > 1 ? $"{meant.Count} wait for a signature: say which" : target is null ? "there is nothing to countersign" : $"there is nothing to countersign in record {target}", known)];
    }
}
