using System.Collections.Immutable;

namespace Logbook.Journal;

/// <summary>
/// Who holds the line and how far its handover has come. At every moment exactly one person holds it, or nobody does;
/// only an acceptance or a relief moves it. Whatever records say, the fold keeps to that.
/// </summary>
public sealed record LineHeld
{
    public static readonly LineHeld ByNobody = new();

    /// <summary>The pages that a receiver must have seen.</summary>
    public static readonly ImmutableArray<string> Pages = ["hazards", "moving", "changed"];

    /// <summary>Who holds it; null when nobody does.</summary>
    public Holder? Holder { get; init; }

    /// <summary>Since when nobody holds it; null while somebody does, and before the first handover.</summary>
    public DateTimeOffset? NobodySince { get; init; }

    /// <summary>Who answered the call while nobody held it.</summary>
    public Answered? Called { get; init; }

    /// <summary>The holder's prepared note; null before it is prepared and after it was taken over.</summary>
    public Prepared? Prepared { get; init; }

    /// <summary>The note that was prepared and dropped since the same person goes on: its lines are kept when that one prepares again.</summary>
    public Prepared? Dropped { get; init; }

    /// <summary>Why the holder keeps it for now; null when nothing holds it up.</summary>
    public HeldUp? NotYet { get; init; }

    /// <summary>What each person has opened since the line last changed hands.</summary>
    public ImmutableList<SeenPage> Seen { get; init; } = [];

    /// <summary>Questions that were answered otherwise than the page since the line last changed hands, oldest first.</summary>
    public ImmutableList<MissedQuestion> Missed { get; init; } = [];

    /// <summary>Pages that a holder who took the line without reading, in an emergency or for a short relief, has not opened yet.</summary>
    public ImmutableList<string> Unread { get; init; } = [];

    /// <summary>In a short relief: the pages that the one who comes back had not opened before it.</summary>
    public ImmutableList<string> UnreadBefore { get; init; } = [];

    /// <summary>Questions without an answer, oldest first.</summary>
    public ImmutableList<AskedQuestion> Questions { get; init; } = [];

    /// <summary>Refused, unattended and emergency ones that no supervisor has signed yet, and what the one who is said to have allowed it has not; oldest first.</summary>
    public ImmutableList<ToCountersign> ToCountersign { get; init; } = [];

    /// <summary>The line after one more record.</summary>
    public LineHeld After(JournalRecord record) => record.Body switch
    {
        HandoverPrepared p when IsHolder(record.By) => this with { Prepared = new(record.Seq, record.By, record.At, p.NoteHash, [.. p.IfThen, .. p.Words]) { IfThens = p.IfThen.Count }, NotYet = null },
        HandoverSeen seen => Saw(record, seen),
        HandoverMissed missed => this with
        {
            Missed = Missed.Add(new(record.By, missed.Question, missed.Right)),
            Seen = Seen.RemoveAll(s => Same(s.By, record.By) && s.Page == Pages[0]),
        },
        HandoverQuestion q => this with { Questions = Questions.Add(new(record.Seq, record.By, record.At, q.Text)) },
        HandoverAnswer { Question: { } id } => this with { Questions = Questions.RemoveAll(q => q.Seq == id) },
        HandoverAnswer a when Holder is null => this with { Called = new(a.From, record.At, a.Text) },
        HandoverAccepted a when IsFrom(a.From) => Taken(record, a.Unattended is null ? "accepted" : "unattended", relief: null) with
        {
            ToCountersign = a.Unattended is { } alone ? Open(record, "unattended", alone) : ToCountersign,
        },
        HandoverRefused refused => this with { ToCountersign = Open(record, "refused", refused.Why) },
        HandoverRelief { Mode: "left" } when !IsHolder(record.By) => this,
        HandoverRelief relief => Relieved(record, relief),
        HandoverNotYet n when IsHolder(record.By) => this with { NotYet = new(record.Seq, record.At, n.Why) },
        HandoverContinued when IsHolder(record.By) => this with { Holder = Holder! with { Continued = record.At }, Prepared = null, Dropped = Prepared ?? Dropped, NotYet = null, Seen = [] },
        HandoverCountersigned c => this with { ToCountersign = ToCountersign.RemoveAll(t => t.Seq == c.Target) },
        PersonChanged { Change: "closed" } p when IsHolder(p.Code) => Left(record),
        _ => this,
    };

    private LineHeld Relieved(JournalRecord record, HandoverRelief relief) => relief.Mode switch
    {
        "left" => Left(record) with { ToCountersign = Open(record, "left unattended", relief.Words) },
        "emergency" => Taken(record, "emergency", relief: null) with { Unread = [.. Pages], ToCountersign = Open(record, "emergency", relief.Words) },
        _ when !IsFrom(relief.From) => this,
        // Back in time it is the first holder's own stretch again; a relief of a relief is still for the first one.
        _ when Holder?.For is { } first && Same(first.Code, record.By) => Taken(record, "accepted", relief: null) with { Holder = first, Unread = UnreadBefore },
        _ => Taken(record, "short", Holder?.For ?? Holder) with { Unread = [.. Pages], UnreadBefore = Holder?.For is null ? Unread : UnreadBefore },
    };

    private LineHeld Taken(JournalRecord record, string how, Holder? relief) => ByNobody with
    {
        Holder = new(record.By, record.At, record.Seq, how) { For = relief, ReliefBegan = relief is null ? null : Holder?.ReliefBegan ?? record.At },
        Questions = Questions,
        ToCountersign = ToCountersign,
    };

    private LineHeld Left(JournalRecord record) => ByNobody with { NobodySince = record.At, Questions = Questions, ToCountersign = ToCountersign };

    private LineHeld Saw(JournalRecord record, HandoverSeen seen) => this with
    {
        Seen = Seen.RemoveAll(s => Same(s.By, record.By) && s.Page == seen.Page).Add(new(record.By, seen.Page, seen.UpTo, record.Seq)),
        Unread = IsHolder(record.By) ? Unread.RemoveAll(page => page == seen.Page) : Unread,
    };

    private ImmutableList<ToCountersign> Open(JournalRecord record, string what, string why) => ToCountersign.Add(new(record.Seq, what, record.By, record.At, record.Shift, why));

    /// <summary>False when somebody else took the line in between: of two who took it at once the first has it.</summary>
    private bool IsFrom(string? from) => from is null ? Holder is null : IsHolder(from);

    private bool IsHolder(string code) => Holder is { } holder && Same(holder.Code, code);

    private static bool Same(string one, string other) => one.Equals(other, StringComparison.OrdinalIgnoreCase);
}

/// <summary>The one who holds the line.</summary>
/// <param name="Since">When it was taken.</param>
/// <param name="Seq">The record that took it.</param>
/// <param name="How">accepted, unattended, short or emergency.</param>
public sealed record Holder(string Code, DateTimeOffset Since, long Seq, string How)
{
    /// <summary>Of a short relief: who held the line before it and comes back.</summary>
    public Holder? For { get; init; }

    public DateTimeOffset? ReliefBegan { get; init; }

    /// <summary>When it was last said that the same person goes on.</summary>
    public DateTimeOffset? Continued { get; init; }
}

/// <param name="Lines">The preparer's own lines: the receiver's must be others.</param>
public sealed record Prepared(long Seq, string By, DateTimeOffset At, string NoteHash, ImmutableArray<string> Lines)
{
    /// <summary>How many of the lines, from the first on, say what to do if something turns.</summary>
    public int IfThens { get; init; }
}

public sealed record HeldUp(long Seq, DateTimeOffset At, string Why);

public sealed record Answered(string Code, DateTimeOffset At, string Text);

/// <param name="UpTo">The last record that the page could tell of.</param>
/// <param name="Seq">The record that says so.</param>
public sealed record SeenPage(string By, string Page, long UpTo, long Seq);

public sealed record AskedQuestion(long Seq, string By, DateTimeOffset At, string Text);

/// <param name="Right">The number of the choice that agreed with the page.</param>
public sealed record MissedQuestion(string By, string Text, int Right);

/// <param name="What">refused, unattended, left unattended or emergency; of what is carried its kind.</param>
/// <param name="Why">The reason that was given; of what is carried its words.</param>
public sealed record ToCountersign(long Seq, string What, string By, DateTimeOffset At, string Shift, string Why)
{
    /// <summary>Who is said to have allowed what is carried, a code or a name as it was typed; null for a handover.</summary>
    public string? Named { get; init; }

    /// <summary>The record that names them, where it is not the item's own; else null.</summary>
    public long? NamedIn { get; init; }

    /// <summary>Who named them last.</summary>
    public string? NamedBy { get; init; }

    /// <summary>Of what is carried: until when it was allowed, as it was told with the name; null when it has no end.</summary>
    public DateTimeOffset? Until { get; init; }

    /// <summary>Of what is carried: what is done instead; null when nothing was told.</summary>
    public string? Instead { get; init; }
}
