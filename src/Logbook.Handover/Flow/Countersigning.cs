using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>A supervisor signs that a refused, unattended or emergency handover was looked at, within the shift.</summary>
public static class Countersigning
{
    /// <param name="target">The handover's record; the oldest open one when null.</param>
    public static Handed Countersign(Desk desk, SignWith sign, string by, long? target, string why)
    {
        ToCountersign? open = null;
        return Handed.Step(
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
    }

    private static List<Mistake> Find(Desk desk, long? target, out ToCountersign? open)
    {
        var all = desk.State.Line.ToCountersign;
        open = target is null ? all.FirstOrDefault() : all.Find(t => t.Seq == target);
        var known = all.IsEmpty ? "none is open" : "open: " + string.Join(", ", all.Select(t => $"{t.Seq} {t.What}"));
        return open is null ? [Mistake.Typed(target is null ? "there is nothing to countersign" : $"there is nothing to countersign in record {target}", known)] : [];
    }
}
