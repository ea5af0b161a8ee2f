using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>A step of the handover as data: what is given, and which rule takes it.</summary>
/// <param name="By">Who takes it.</param>
internal abstract record HandStep(string By)
{
    /// <summary>What the signature means; null when none is asked for.</summary>
    public virtual string? Means => null;

    /// <summary>What is said when it is on the disk.</summary>
    public abstract string Done { get; }

    public abstract Handed Take(Desk desk, SignWith sign);
}

internal sealed record PrepareNote(PrepareRequest Request) : HandStep(Request.By)
{
    public override string Means => Signing.Prepared;

    public override string Done => "prepared: you hold the line until somebody has taken it over";

    public override Handed Take(Desk desk, SignWith sign) => Preparing.Prepare(desk, sign, Request);
}

internal sealed record TakeOver(AcceptRequest Request) : HandStep(Request.By)
{
    public override string Means => (Request.Unattended is null ? Signing.Accepted : Signing.Unattended) + (Request.Reservation is null ? "" : "; with reservation");

    public override string Done => "you hold the line";

    public override Handed Take(Desk desk, SignWith sign) => Accepting.Accept(desk, sign, Request);
}

internal sealed record ShortRelief(string By, string Words) : HandStep(By)
{
    public override string Means => Signing.ShortRelief;

    public override string Done => "you hold the line, for less than an hour";

    public override Handed Take(Desk desk, SignWith sign) => Relieving.Short(desk, sign, By, Words);
}

/// <param name="Open">What is signed for.</param>
internal sealed record Countersign(string By, ToCountersign Open, string Why) : HandStep(By)
{
    public override string Means => Countersigning.Means(Open);

    public override string Done => "countersigned";

    public override Handed Take(Desk desk, SignWith sign) => Countersigning.Countersign(desk, sign, By, Open.Seq, Why);
}

/// <summary>Closes a carried item.</summary>
internal sealed record CloseItem(string By, CarriedItem Item, CarryClosed Closed) : HandStep(By)
{
    public override string? Means => Item.IsHazard ? Signing.Closed : null;

    public override string Done => "closed";

    public override Handed Take(Desk desk, SignWith sign) => SignedWriting.Close(desk, sign, Closed, By);
}

/// <summary>Counts people out of a permit, by another than the one whose count stands.</summary>
internal sealed record CountOut(string By, CarriedItem Item, CarryConfirmed Look) : HandStep(By)
{
    public override string Means => Signing.CountedOut;

    public override string Done => Look.Fields.TryGetValue("inside", out var inside) ? $"{Say.Visible(inside)} counted inside" : "counted";

    public override Handed Take(Desk desk, SignWith sign) => SignedWriting.Confirm(desk, sign, Look, By);
}

internal sealed record EmergencyRelief(string By, string Why) : HandStep(By)
{
    public override string Done => "you hold the line";

    public override Handed Take(Desk desk, SignWith sign) => Relieving.Emergency(desk, By, Why);
}

internal sealed record LeaveLine(string By, string Why) : HandStep(By)
{
    public override string Done => "NOBODY HOLDS THE LINE; a supervisor has to sign";

    public override Handed Take(Desk desk, SignWith sign) => Relieving.Leave(desk, By, Why);
}

internal sealed record RefuseLine(string By, string Why) : HandStep(By)
{
    public override string Done => "refused; the line stays where it is, and a supervisor has to sign";

    public override Handed Take(Desk desk, SignWith sign) => Staying.Refuse(desk, By, Why);
}

internal sealed record StayOn(string By, string Why) : HandStep(By)
{
    public override string Done => "not yet: you keep the line; prepare anew when it is over";

    public override Handed Take(Desk desk, SignWith sign) => Staying.NotYet(desk, By, Why);
}

internal sealed record GoOnHolding(string By, string Why) : HandStep(By)
{
    public override string Done => "you go on holding the line";

    public override Handed Take(Desk desk, SignWith sign) => Staying.Continue(desk, By, Why);
}

internal sealed record AskOther(string By, string Text) : HandStep(By)
{
    public override string Done => "asked";

    public override Handed Take(Desk desk, SignWith sign) => Asking.Ask(desk, By, Text, null);
}

/// <param name="From">Who said it aloud, when another writes it down.</param>
internal sealed record ReplyTo(string By, long Question, string Text, string? From) : HandStep(By)
{
    public override string Done => "answered";

    public override Handed Take(Desk desk, SignWith sign) => Asking.Reply(desk, By, Question, Text, From);
}

/// <param name="Of">Whose walks.</param>
/// <param name="Why">Why another's are looked at; null for the own ones.</param>
internal sealed record LookAtOwn(string By, string Of, string? Why) : HandStep(By)
{
    public override string Means => Why is null ? "look at what the audit says of my own walks" : "look at another's, who is told";

    public override string Done => "shown";

    public override Handed Take(Desk desk, SignWith sign) => OwnLooks.Look(desk, sign, By, Of, Why);
}

internal sealed record AnswerOwn(string By, string Text) : HandStep(By)
{
    public override string Means => "have looked at my own, and answer";

    public override string Done => "answered";

    public override Handed Take(Desk desk, SignWith sign) => OwnLooks.Answer(desk, sign, By, Text);
}

/// <param name="From">Who answered the call while nobody held the line.</param>
internal sealed record CallAnswered(string By, string From, string Text) : HandStep(By)
{
    public override string Done => "written down";

    public override Handed Take(Desk desk, SignWith sign) => Asking.Called(desk, By, From, Text);
}
