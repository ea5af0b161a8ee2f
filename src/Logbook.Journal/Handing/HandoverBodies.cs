namespace Logbook.Journal;

/// <summary>How a record was signed, and what the signature means in words.</summary>
/// <param name="How"><c>pin</c>; <c>witness</c> when another person's PIN stood for a forgotten one; <c>none</c> where none is asked.</param>
/// <param name="Means">As printed: <c>read, asked, hold the line</c>.</param>
/// <param name="Witness">Code of the person whose PIN it was; the signer's identity is to be confirmed.</param>
/// <param name="Reset">The record that reset the signer's PIN, printed beside the first signature after it.</param>
public sealed record Signed(string How, string Means, string? Witness, long? Reset);

/// <summary>The holder's note, made ready for whoever takes over.</summary>
/// <param name="Declared">Every hazard section with <c>checked</c>, <c>not-checked</c> or <c>change</c>.</param>
/// <param name="IfThen">What to do if something that is open turns: <c>if it falls under 240, then ...</c>.</param>
/// <param name="Note">The note as it stood, kept with the record.</param>
/// <param name="NoteHash">Hex SHA-256 of the note's lines.</param>
public sealed record HandoverPrepared(
    IReadOnlyDictionary<string, string> Declared, IReadOnlyList<string> IfThen, IReadOnlyList<string> Words, FrozenNote Note, string NoteHash, Signed Signed) : RecordBody
{
    public override string Kind => "handover-prepared";

    /// <summary>Section to what changed in it, in own words; null when nothing was declared as changed, and in older records.</summary>
    public IReadOnlyDictionary<string, string>? Changes { get; init; }
}

/// <summary>A page was shown in full to the person who writes this.</summary>
/// <param name="Page">hazards, moving, changed, or the number of one record.</param>
/// <param name="UpTo">The last record that the page could tell of.</param>
public sealed record HandoverSeen(string Page, long UpTo) : RecordBody
{
    public override string Kind => "handover-seen";
}

/// <summary>A question about what can hurt was answered otherwise than the page says: it is to be read anew, and asked anew.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="Right">The number of the choice that agreed with the page, so that it is not asked in the same order again.</param>
public sealed record HandoverMissed(string Question, int Right) : RecordBody
{
    public override string Kind => "handover-missed";
}

/// <summary>What somebody asks about the handover, before or after it.</summary>
/// <param name="About">A record, when it is about one.</param>
public sealed record HandoverQuestion(string Text, long? About) : RecordBody
{
    public override string Kind => "handover-question";
}

/// <summary>An answer, or who answered the call while nobody held the line.</summary>
/// <param name="Question">The question's record; null for a call while nobody held the line.</param>
/// <param name="From">Code of the person who answered.</param>
/// <param name="Aloud">Said aloud and written down by another.</param>
public sealed record HandoverAnswer(long? Question, string Text, string From, bool Aloud) : RecordBody
{
    public override string Kind => "handover-answer";
}

/// <summary>The line is taken over in full: from here on the signer is responsible.</summary>
/// <param name="From">Code of who held it; null when nobody did.</param>
/// <param name="Prepared">The holder's record; null when the line was taken over unattended.</param>
/// <param name="First">What the signer checks first, in own words.</param>
/// <param name="Asked">What the program asked and was told rightly.</param>
/// <param name="Note">The note as accepted: never changed by what is learned later.</param>
public sealed record HandoverAccepted(
    string? From, long? Prepared, IReadOnlyList<string> First, string? Reservation, IReadOnlyList<string> Asked, string? Unattended,
    FrozenNote Note, string NoteHash, Signed Signed) : RecordBody
{
    public override string Kind => "handover-accepted";

    /// <summary>Each question that was first answered otherwise than the page, once for each such answer; null when none was, and in older records.</summary>
    public IReadOnlyList<string>? Missed { get; init; }
}

/// <summary>The line is not taken over: it stays with whoever holds it.</summary>
public sealed record HandoverRefused(string Why) : RecordBody
{
    public override string Kind => "handover-refused";
}

/// <summary>The line changes hands, or is left, without a full handover.</summary>
/// <param name="Mode"><c>short</c> for less than an hour and back; <c>emergency</c>; <c>left</c> when nobody takes it.</param>
/// <param name="From">Code of who held it; null when nobody did.</param>
/// <param name="Words">The one line of a short relief, or the reason.</param>
public sealed record HandoverRelief(string Mode, string? From, string Words, Signed Signed) : RecordBody
{
    public override string Kind => "handover-relief";
}

/// <summary>The holder keeps the line for now: a critical step is running.</summary>
public sealed record HandoverNotYet(string Why) : RecordBody
{
    public override string Kind => "handover-not-yet";
}

/// <summary>The same person goes on over a shift change.</summary>
public sealed record HandoverContinued(string Why) : RecordBody
{
    public override string Kind => "handover-continued";
}

/// <summary>A supervisor has looked at a refused, unattended or emergency handover.</summary>
/// <param name="Target">Its record.</param>
public sealed record HandoverCountersigned(long Target, string Why, Signed Signed) : RecordBody
{
    public override string Kind => "handover-countersigned";
}

/// <summary>Something about a person's standing. No secret and no hash of one ever stands in a record.</summary>
/// <param name="Change">
/// <c>pin-set</c>, <c>pin-reset</c>, <c>closed</c>, <c>confirmed</c> for an earlier witnessed signature; <c>own-answered</c> by the
/// person and <c>own-looked</c> by somebody else, of what the audit says of the person's own walks.
/// </param>
/// <param name="Target">The witnessed record that is confirmed.</param>
public sealed record PersonChanged(string Code, string Change, long? Target, string? Why) : RecordBody
{
    public override string Kind => "person";
}

/// <summary>A note's lines as they stood: kept as data, so that every template can print them.</summary>
/// <param name="Shift">Id of the shift that it tells of.</param>
/// <param name="Period">That shift in words.</param>
/// <param name="Drawn">When it was drawn, in words.</param>
public sealed record FrozenNote(
    string Shift, string Period, string Drawn, IReadOnlyList<string> TakeLonger, IReadOnlyList<FrozenSection> Sections, IReadOnlyList<FrozenCaution> Cautions);

public sealed record FrozenSection(string Id, string Title, string Beside, IReadOnlyList<FrozenLine> Lines);

public sealed record FrozenLine(string Label, string Text);

public sealed record FrozenCaution(string Hazard, string Text, string Ppe, string FirstAid, string Source, string Revision, bool Draft);
