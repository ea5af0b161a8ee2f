using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Something that happened.</summary>
public abstract record Message;

/// <summary>A key was pressed.</summary>
public sealed record Pressed(Keystroke Key) : Message;

/// <summary>Text was pasted.</summary>
public sealed record Pasted(string Text) : Message;

/// <summary>The lines of a pasted column, of which those before <paramref name="At"/> are taken.</summary>
internal sealed record PastedColumn(IReadOnlyList<string> Lines, int At) : Message;

/// <summary>The terminal has this size.</summary>
public sealed record Resized(int Width, int Height) : Message;

/// <summary>Time went on.</summary>
public sealed record Ticked : Message;

/// <summary>What is known of the line has changed.</summary>
internal sealed record FactsChanged(Facts Facts) : Message;

/// <summary>An entry is on the disk.</summary>
internal sealed record EntrySaved(JournalRecord Record) : Message;

/// <summary>Nothing was saved, and why.</summary>
internal sealed record EntryNotSaved(string Why) : Message;

/// <summary>The draft's last line is on the disk.</summary>
internal sealed record DraftKept : Message;

/// <summary>The draft could not be written.</summary>
internal sealed record DraftNotKept(string Why) : Message;

/// <summary>A round is ready to be typed.</summary>
/// <param name="Slot">The slot that is open; null when none is.</param>
/// <param name="Saved">What the slot has already, by tag.</param>
/// <param name="Second">What of it is taken a second time; null for the round itself.</param>
internal sealed record RoundOpened(Round Round, RoundNow? Slot, IReadOnlyDictionary<string, SavedReading> Saved, SecondReading? Second) : Message
{
    /// <summary>Tags that are not asked for in this slot, each with why: their equipment rests.</summary>
    public IReadOnlyDictionary<string, string> Resting { get; init; } = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
}

/// <summary>The newest values of a point, oldest first.</summary>
internal sealed record LookedBack(string Point, IReadOnlyList<SeriesValue> Values) : Message;

/// <summary>Records in words, newest first.</summary>
/// <param name="Oldest">Everything from this sequence number on has been read; 1 at the log's beginning.</param>
internal sealed record LogRead(IReadOnlyList<LogLine> Lines, long Oldest) : Message;

/// <summary>Points over a stretch of time, in the order in which they were asked for.</summary>
internal sealed record SeriesRead(IReadOnlyList<GraphSeries> Series) : Message;

/// <summary>The audit's flags of the stretch that was asked for.</summary>
internal sealed record AuditRead(ReadAudit Asked, IReadOnlyList<AuditFlag> Flags) : Message;

/// <summary>The record and everything that it names or that names it.</summary>
internal sealed record RelatedRead(long Seq, IReadOnlyList<LogLine> Lines) : Message;

/// <summary>What became of a record that was to be written.</summary>
internal sealed record Wrote(ToWrite What, Written Written) : Message
{
    /// <summary>What stands against what was just written, and must be said before anything else; null when nothing does.</summary>
    public string? Warning { get; init; }
}

/// <summary>One record in full.</summary>
/// <param name="Words">The same in one line of words.</param>
/// <param name="Signed">Of a step of the handover, what was signed.</param>
/// <param name="Corrections">Of an entry, what was put right later.</param>
internal sealed record RecordRead(JournalRecord Record, string Words, IReadOnlyList<NoteSection> Signed, IReadOnlyList<JournalRecord> Corrections) : Message;

/// <summary>A page of the handover, to be read.</summary>
/// <param name="UpTo">The last record that it could tell of.</param>
/// <param name="Missing">What the reader has still to see, this page among it.</param>
internal sealed record PageShown(HandoverPage Page, long UpTo, IReadOnlyList<string> Missing) : Message;

/// <summary>What could hurt in this shift and is over.</summary>
internal sealed record OverRead(IReadOnlyList<OverInShift> Over) : Message;

/// <summary>Nothing of the handover is unread; what is asked about it.</summary>
/// <param name="Told">What the other side wrote, and the answers to this person's questions.</param>
internal sealed record AllRead(IReadOnlyList<HazardQuestion> Questions, IReadOnlyList<NoteLine> Told) : Message;

/// <summary>What became of a step of the handover.</summary>
internal sealed record StepTaken(HandStep Step, Handed Handed) : Message;

/// <summary>A reading of the record on top is to be put right.</summary>
internal sealed record CorrectAsked : Message;

/// <summary>The journal could not be read.</summary>
internal sealed record Troubled(string Why) : Message;
