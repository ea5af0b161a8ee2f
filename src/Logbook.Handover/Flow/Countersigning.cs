using System.Globalization;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// A supervisor signs that a refused, unattended or emergency handover was looked at, within the shift; who is said to have
/// allowed a bypass or a temporary change signs that it was so, and nobody else does; a supervisor does where the record
/// names nobody who can.
/// </summary>
public static class Countersigning
{
    /// <param name="target">The record of the handover or of what is carried; the one that waits when null, and refused when more than one does.</param>
    public static Handed Countersign(Desk desk, SignWith sign, string by, long? target, string why)
    {
        ToCountersign? open = null;
        var handed = Handed.Step(
            desk, by,
            () => [.. Found(why), .. Find(desk, target, by, out open)],
            () => WhyNot(desk.Site, open!, by) is { } no ? no + (open!.Named is null && desk.Site.FindPerson(by) is not { Role: Role.Supervisor } ? ": " + InCharge.Supervisors(desk) : "") : null,
            () =>
            {
                // What is signed for stands above what the signature means.
                var told = sign with { Tell = sign.Tell is not { } tell ? null : means => { tell(What(desk.Site, open!)); tell(means); } };
                var (signed, refused) = Signing.Sign(desk, told, by, Means(open!), open!.By);
                return signed is null ? (null, refused) : (new HandoverCountersigned(open.Seq, why.Trim(), signed), null);
            });
        return handed.Record is null ? handed : handed with { Beside = $"signed for: {What(desk.Site, open!)}" };
    }

    private static IEnumerable<Mistake> Found(string why) => string.IsNullOrWhiteSpace(why)
        ? [Mistake.Typed("what was found is empty", "a few words: --why \"walked it with the crew, nothing left open\"")]
        : Given.Text(why, "what was found");

    /// <summary>What the signature means.</summary>
    public static string Means(ToCountersign open) => open.Named is null ? Signing.Countersigned : Signing.Allowed;

    /// <summary>Why it is not for this person to sign; null when it is.</summary>
    public static string? WhyNot(Site site, ToCountersign open, string by) => open.Named switch
    {
        null when site.FindPerson(by) is not { Role: Role.Supervisor } => "only a supervisor countersigns",
        null => Handed.Same(open.By, by) ? "who took part does not countersign" : null,
        { } when Signer(site, open) is { } signer => Handed.Same(signer.Code, by) ? null : $"{Say.Visible(signer.Name)} alone signs for it",
        { } named when site.FindPerson(by) is not { Role: Role.Supervisor } => $"{Say.Visible(site.FindNamed(named)?.Name ?? named)} cannot allow it: a supervisor signs instead",
        _ => Handed.Same(open.By, by) ? "who opened it does not allow it" : null,
    };

    /// <summary>What waits, in one line: <c>refused handover, Operator two Tue 24 Nov 19:02 (#31)</c>.</summary>
    public static string Words(Site site, ToCountersign open) => open.Named is null ? What(site, open) : $"{What(site, open)}. {Allowed(site, open)}";

    /// <summary>Who is said to have allowed it: no fact until that person has signed.</summary>
    internal static string Allowed(Site site, ToCountersign open) =>
        $"Allowed, it is said, by {Say.Visible(site.FindNamed(open.Named!)?.Name ?? open.Named!)}{(Signer(site, open) is null ? ", who cannot allow it: a supervisor signs instead" : ": not yet signed by them")}";

    private static string What(Site site, ToCountersign open) =>
        $"{(open.Named is null ? $"{open.What} handover" : $"{Say.Kind(open.What)}: {Say.Visible(open.Why)}{(open.Until is { } until ? $"; until {Say.Day(site, until)}" : "")}{(open.Instead is { } instead ? $"; instead {Say.Visible(instead)}" : "")}")}, {Say.Person(site, open.By)} {Say.Day(site, open.At)} {Say.Ref(open.Seq)}{(open.NamedIn is { } seq ? $", told again by {Say.Person(site, open.NamedBy!)} {Say.Ref(seq)}" : "")}";

    /// <summary>The person who is named; null where older records name nobody of the site, or an operator, who cannot allow it.</summary>
    private static Person? Signer(Site site, ToCountersign open) => open.Named is { } named && site.FindNamed(named) is { Role: not Role.Operator } person ? person : null;

    /// <summary>A signature must not fall on another one than was meant.</summary>
    private static List<Mistake> Find(Desk desk, long? target, string by, out ToCountersign? open)
    {
        var all = desk.State.Line.ToCountersign;
        // Unless it is said which, it is one of those that are for this person to sign; where none is, the rule says why.
        var own = all.FindAll(t => WhyNot(desk.Site, t, by) is null);
        var meant = target is not null ? all.FindAll(t => t.Seq == target) : own.IsEmpty ? all : own;
        open = meant is [var one] ? one : null;
        var known = all.IsEmpty ? "none is open" : string.Join("; ", all.Select(t => $"{t.Seq}: {Words(desk.Site, t)}"));
        return open is not null ? []
            : [Mistake.Typed(meant.Count > 1 ? $"{meant.Count} wait for a signature: say which" : target is null ? "there is nothing to countersign" : $"there is nothing to countersign in record {target}", known)];
    }
}
