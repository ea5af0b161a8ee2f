using System.Text.Json.Serialization;

namespace Logbook.Journal;

/// <summary>Somebody looked at a carried item: still so, changed, or not seen.</summary>
/// <param name="Id">The item.</param>
/// <param name="Seen">False when it was looked for in vain, or nobody went.</param>
/// <param name="Changed">What is different now; null when it is still so.</param>
/// <param name="Fields">Fields of the item that have a new value: <c>inside</c>, <c>status</c>.</param>
/// <param name="Lock"><c>on</c> or <c>off</c>: the writer's own lock at an isolation; null when no lock moved.</param>
public sealed record CarryConfirmed(
    long Id, bool Seen, string? Changed, IReadOnlyDictionary<string, string> Fields, string? Lock) : RecordBody
{
    public override string Kind => "carry-confirm";

    /// <summary>What is recorded as changed where only the end is.</summary>
    public const string ItsEnd = "its end";

    /// <summary>Its new end, when it goes on longer or ends earlier; null when the end stays.</summary>
    public DateTimeOffset? Until { get; init; }

    /// <summary>Code of who owns it from now on; null when its owner stays.</summary>
    public string? Owner { get; init; }

    /// <summary>True when it only says who owns it from now on, and until when: nobody looked at it for that.</summary>
    [JsonIgnore] // follows from the others
    public bool OnlyNames => Owner is not null && (Changed is null or ItsEnd) && Fields.Count == 0 && Lock is null;

    /// <summary>The signature, where people were counted out by another than the one whose count stood.</summary>
    public Signed? Signed { get; init; }
}

/// <summary>A standing order: it holds until it ends, and each person says that they have read it. Its id is the sequence number of this record.</summary>
public sealed record OrderGiven(string Text, DateTimeOffset? Until) : RecordBody
{
    public override string Kind => "order";
}

/// <summary>A standing order holds no longer. Whoever had read it reads that too.</summary>
/// <param name="Id">The order.</param>
public sealed record OrderWithdrawn(long Id, string Why) : RecordBody
{
    public override string Kind => "order-withdrawn";
}

/// <summary>The writer has read a standing order, or that it was withdrawn.</summary>
public sealed record OrderSeen(long Id) : RecordBody
{
    public override string Kind => "order-seen";
}

/// <summary>What was done about finding <paramref name="Number"/> of record <paramref name="Seq"/>: cause, action, who was told.</summary>
public sealed record FindingAnswered(long Seq, int Number, string Text) : RecordBody
{
    public override string Kind => "answer";
}

/// <summary>An upset of the line, declared or over. Until it is over, rounds other than safety points are one line, not a miss each.</summary>
/// <param name="Ended">Null when it begins.</param>
public sealed record UpsetDeclared(DateTimeOffset Began, DateTimeOffset? Ended, string? Why) : RecordBody
{
    public override string Kind => "upset";
}

/// <summary>A note to another department, or the acknowledgement of one by a named person there.</summary>
/// <param name="To">The department; null in an acknowledgement.</param>
/// <param name="Text">The note, or what was answered.</param>
/// <param name="Acknowledges">The note that is acknowledged; null in a note.</param>
/// <param name="Name">Who acknowledged it, by name.</param>
public sealed record DepartmentNote(string? To, string Text, long? Acknowledges, string? Name) : RecordBody
{
    public override string Kind => "department";
}

/// <summary>A change of who works when, against the pattern.</summary>
/// <param name="What">swap (Person works instead of For), holdover (Person stays on) or holiday (Person is off).</param>
/// <param name="Person">Code of the person.</param>
/// <param name="For">Code of the person replaced; in a swap alone.</param>
public sealed record RosterChange(string What, string Person, string? For, DateTimeOffset From, DateTimeOffset To, string? Why) : RecordBody
{
    public override string Kind => "roster";
}

/// <summary>The clock stood earlier than at the record before, or somebody acknowledges that.</summary>
/// <param name="Before">What the clock showed at the record before; null in an acknowledgement.</param>
/// <param name="After">What it showed then; null in an acknowledgement.</param>
/// <param name="Acknowledges">The jump that is acknowledged; null in a jump.</param>
/// <param name="Why">What was found about it.</param>
public sealed record ClockJumped(DateTimeOffset? Before, DateTimeOffset? After, long? Acknowledges, string? Why) : RecordBody
{
    public override string Kind => "clock";
}
