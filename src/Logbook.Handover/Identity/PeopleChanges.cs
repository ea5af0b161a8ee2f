using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>PINs set and reset, people closed, witnessed signatures confirmed. Each is a record; none holds anything of a PIN.</summary>
public static class PeopleChanges
{
    /// <summary>
    /// Sets a PIN. One's own asks for the old one when there is one; another's is a reset, by a supervisor or an engineer
    /// with their own PIN, and stands beside that person's next signature. So is one's own whose old one is lost.
    /// </summary>
    public static Handed SetPin(Desk desk, SignWith sign, string code, string by, Func<string?> askNew)
    {
        var own = Handed.Same(code, by);
        string? pin = null;
        long? lost = null;
        var handed = Handed.Step(
            desk, by,
            () => desk.WhyNot(code),
            () => (own ? OwnPin(desk, sign, Code(desk, code), lost = LostPins.Set(desk.State, sign.Pins, code)) : Lead(desk, sign, by, "resets a PIN")) ?? Weak(pin = askNew()),
            () => new PersonChanged(Code(desk, code), own && lost is null ? "pin-set" : "pin-reset", null, lost is null ? null : "the old one was no longer kept in journal/pins"));
        if (handed.Record is not null)
        {
            // The record comes first: a PIN that changed without one would be the worse half.
            sign.Pins.Set(Code(desk, code), pin!);
        }

        return handed;
    }

    /// <summary>The person writes no more; old records keep the name.</summary>
    public static Handed Close(Desk desk, SignWith sign, string code, string by, string why) => Handed.Step(
        desk, by,
        () => [.. Given.Text(why, "the reason for closing"), .. desk.WhyNot(code)],
        () => Handed.Same(code, by) ? "nobody closes the own code"
            : desk.State.Line.Holder is { } holder && (Handed.Same(holder.Code, code) || Handed.Same(holder.For?.Code, code))
                ? $"{Say.Person(desk.Site, code)} holds the line: it must be handed over first"
            : Lead(desk, sign, by, "closes a code"),
        () => new PersonChanged(Code(desk, code), "closed", null, why.Trim()));

    /// <summary>The signer confirms with the own PIN what a witness had signed for.</summary>
    public static Handed Confirm(Desk desk, SignWith sign, long target, string by) => Handed.Step(
        desk, by,
        () => desk.State.People.GetValueOrDefault(by) is { } standing && standing.ToConfirm.Contains(target)
            ? []
            : [Mistake.Typed($"record {target} is no witnessed signature of {by} that waits to be confirmed", Waiting(desk, by))],
        () => Signing.Check(desk, sign, by),
        () => new PersonChanged(Code(desk, by), "confirmed", target, null));

    private static string? OwnPin(Desk desk, SignWith sign, string code, long? lost) =>
        sign.Pins.Has(code) ? Signing.Check(desk, sign, code)
        : Rights.WhyNot(desk) ?? (lost is { } set ? LostPins.WhyNotOwn(desk, sign.Pins, code, set) : null);

    private static string? Lead(Desk desk, SignWith sign, string by, string does) =>
        !LostPins.IsLead(desk.Site.FindPerson(by)) ? $"only a supervisor or an engineer {does}"
        : Rights.WhyNot(desk) ?? Signing.Check(desk, sign, by);

    private static string? Weak(string? pin) => pin is null ? "no new PIN was given" : Pins.WhyWeak(pin);

    private static string Waiting(Desk desk, string by) =>
        desk.State.People.GetValueOrDefault(by)?.ToConfirm is { IsEmpty: false } open ? "waiting: " + string.Join(", ", open) : "none waits";

    private static string Code(Desk desk, string code) => desk.Site.FindPerson(code)!.Code;
}
