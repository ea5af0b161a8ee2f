namespace Logbook.Journal;

/// <summary>The store's port. One line, one chain, one journal; several terminals may hold one open at once.</summary>
public interface IJournalStore : IDisposable
{
    /// <summary>The chain's end as it is on the disk now.</summary>
    Head Head { get; }

    /// <summary>Gives the draft its place in the chain and returns when it is on the disk.</summary>
    /// <exception cref="JournalException">Nothing was saved: busy, damaged, full or not readable.</exception>
    JournalRecord Append(RecordDraft draft);

    /// <summary>Every record from <paramref name="fromSeq"/> on, in order.</summary>
    IEnumerable<JournalRecord> Read(long fromSeq = 1);

    /// <summary>Every record's bytes as they lie on the disk, unread: for verification and export.</summary>
    IEnumerable<ReadOnlyMemory<byte>> Bytes(long fromSeq = 1);

    /// <summary>Reads the whole chain, and compares its end with what was noted outside it.</summary>
    ChainCheck Verify(LongWork? work = null);

    /// <summary>Every record whose <c>At</c> lies in [from, to), by sequence. An entry's readings may be older than the entry: see <see cref="Series"/>.</summary>
    IEnumerable<JournalRecord> Between(DateTimeOffset from, DateTimeOffset to);

    /// <summary>
    /// Values of one point read in [from, to), corrections applied, by reading time and then sequence. Goes by the time of the
    /// reading, however late it was typed; a derived value has the time of its entry.
    /// </summary>
    /// <param name="upTo">Only what records up to this one say.</param>
    IReadOnlyList<SeriesValue> Series(string point, DateTimeOffset from, DateTimeOffset to, long upTo = long.MaxValue);

    /// <summary>Every correction of an entry with a sequence number from <paramref name="first"/> to <paramref name="last"/>, by its own sequence.</summary>
    IEnumerable<JournalRecord> Corrections(long first, long last);

    /// <summary>
    /// The newest state that was kept of a record up to <paramref name="upTo"/>, so that a replay need not begin at the first
    /// record; <see cref="State.Empty"/> when none was.
    /// </summary>
    State Snapshot(long upTo = long.MaxValue);

    /// <summary>Offers a state to keep. A store may decline, and may drop it at any time: what is shown never depends on it.</summary>
    void Keep(State state);
}

/// <summary>One value of a point's history: read or derived.</summary>
/// <param name="Value">Null when not taken.</param>
/// <param name="Seq">The entry that it stands in.</param>
/// <param name="CorrectedBy">The correction that put it right, when there is one.</param>
public sealed record SeriesValue(
    string Point, DateTimeOffset At, double? Value, string? Typed, string Unit, string? Why, string? Round, string By, long Seq, long? CorrectedBy);

/// <summary>Why the store could not do what was asked.</summary>
public enum JournalTrouble { Busy, Damaged, Full, Unreadable, Away, Denied }

/// <summary>The store could not do it; nothing is half saved. The message is one clear line for a person.</summary>
public sealed class JournalException(JournalTrouble trouble, string message, Exception? inner = null) : Exception(message, inner)
{
    public JournalTrouble Trouble { get; } = trouble;
}
