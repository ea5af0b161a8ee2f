using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A record beside entries and handovers, as data: what is given, and the function that checks and writes it.</summary>
/// <param name="By">Who writes it.</param>
internal abstract record ToWrite(string By)
{
    /// <summary>What is said when it is on the disk.</summary>
    public abstract string Done { get; }

    public abstract Written Write(Desk desk);

    /// <summary>Equipment of which the log may now say two things that cannot both be true; null for none.</summary>
    public virtual string? On(Desk desk) => null;

    /// <summary>What must be said beside it once it is written, before anything else; null when nothing.</summary>
    public virtual string? Beside(Site site) => null;
}

/// <param name="Target">The entry that the readings stand in.</param>
/// <param name="Right">Each reading as it should have been; in one record, so that nothing is judged in between.</param>
internal sealed record CorrectReadings(string By, long Target, IReadOnlyList<TypedReading> Right, string Why) : ToWrite(By)
{
    public override string Done => $"{string.Join(", ", Right.Select(r => r.Point))} put right; both values stay";

    public override Written Write(Desk desk) => Writing.Correct(desk, Target, Right, Why, By);
}

/// <param name="Related">The record that it is about; null for none.</param>
internal sealed record AddRemark(string By, string Text, long? Related) : ToWrite(By)
{
    public override string Done => "remark written";

    public override Written Write(Desk desk) => Writing.Remark(desk, Text, null, Related, By);
}

/// <param name="Finding"><c>SEQ.N</c>.</param>
internal sealed record AnswerFinding(string By, string Finding, string Text) : ToWrite(By)
{
    public override string Done => "answered";

    public override Written Write(Desk desk) => Writing.Answer(desk, Finding, Text, By);
}

/// <param name="Item">As it stood on the screen.</param>
internal sealed record ConfirmCarried(string By, CarriedItem Item, CarryConfirmed Look) : ToWrite(By)
{
    public override string Done => Look switch
    {
        { Owner: not null } => "it has another owner",
        { Lock: { } step } => $"your own lock is {step}",
        { Seen: false } => "not seen" + Inside,
        { Changed: not null } or { Fields.Count: > 0 } => "changed" + Inside,
        _ => "still so" + Inside,
    };

    /// <summary>How many are inside by it: a look that counts nobody leaves them there.</summary>
    private string Inside => Item.ItemKind != "permit" ? ""
        : Look.Fields.TryGetValue("inside", out var now) ? $", {Say.Visible(now)} counted inside"
        : Item.Fields.TryGetValue("inside", out var before) ? $", not counted: still {Say.Visible(before)} inside"
        : Item.MayBeInside ? ", not counted: people may be inside" : "";

    public override Written Write(Desk desk) => Writing.ConfirmCarried(desk, Look, By);

    public override string? On(Desk desk) => desk.State.Carried.Find(i => i.Id == Look.Id)?.On;

    public override string? Beside(Site site) => LocksOn.OnNewOwner(site, Item, Look);
}

internal sealed record OpenCarried(string By, Carry Item) : ToWrite(By)
{
    public override string Done => "open, and carried until it is closed";

    public override Written Write(Desk desk) => Writing.AddCarried(desk, Item, By);

    public override string? On(Desk desk) => Item.On;
}

/// <param name="Name">What it is called, for what is said.</param>
internal sealed record SetState(string By, string Equipment, string Name, string State, DateTimeOffset? Since, string Why) : ToWrite(By)
{
    public override string Done => $"{Name}: {State}";

    public override Written Write(Desk desk) => Writing.ChangeState(desk, Equipment, State, Since, Why, By);

    public override string? On(Desk desk) => Equipment;
}

internal sealed record ReadOrder(string By, long Id) : ToWrite(By)
{
    public override string Done => "read by you";

    public override Written Write(Desk desk) => Writing.SeeOrder(desk, Id, By);
}

internal sealed record WithdrawOrder(string By, long Id, string Why) : ToWrite(By)
{
    public override string Done => "withdrawn; who had read it is shown that";

    public override Written Write(Desk desk) => Writing.WithdrawOrder(desk, Id, Why, By);
}

internal sealed record TellDepartment(string By, string To, string Text) : ToWrite(By)
{
    public override string Done => $"{To} has it when somebody there acknowledges it: written down";

    public override Written Write(Desk desk) => Writing.TellDepartment(desk, To, Text, By);
}

internal sealed record NoteTaken(string By, long Id, string Name, string Answer) : ToWrite(By)
{
    public override string Done => $"acknowledged by {Name}";

    public override Written Write(Desk desk) => Writing.Acknowledge(desk, Id, Name, Answer, By);
}

internal sealed record BeginUpset(string By, DateTimeOffset Since, string Why) : ToWrite(By)
{
    public override string Done => "an upset is declared: rounds but safety points become one line";

    public override Written Write(Desk desk) => Writing.BeginUpset(desk, Since, Why, By);
}

internal sealed record EndUpset(string By, DateTimeOffset At) : ToWrite(By)
{
    public override string Done => "the upset is over";

    public override Written Write(Desk desk) => Writing.EndUpset(desk, At, null, By);
}
