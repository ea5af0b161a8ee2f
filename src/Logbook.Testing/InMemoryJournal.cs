using Logbook.Journal;

namespace Logbook.Testing;

/// <summary>A real journal that lives as long as its process: same records, same chain, no disk.</summary>
public sealed class InMemoryJournal : IJournalStore
{
    private readonly Lock _turn = new();
    private readonly List<JournalRecord> _records = [];

    public Head Head
    {
        get
        {
            lock (_turn)
                return _records.Count == 0 ? Head.Empty : Head.Of(_records[^1]);
        }
    }

    public JournalRecord Append(RecordDraft draft)
    {
        lock (_turn)
        {
            if (_records.Count > 0)
                Chain.MustMatch(_records[0].Chain, draft);
            var record = JournalRecord.Seal(draft, Head);
            _records.Add(record);
            return record;
        }
    }

    public IEnumerable<JournalRecord> Read(long fromSeq = 1) => Upto(fromSeq);

    public IEnumerable<ReadOnlyMemory<byte>> Bytes(long fromSeq = 1) => Upto(fromSeq).Select(record => record.Bytes);

    public ChainCheck Verify(LongWork? work = null) => Chain.Verify(Bytes());

    public IEnumerable<JournalRecord> Between(DateTimeOffset from, DateTimeOffset to) =>
        Upto(1).Where(record => record.At >= from && record.At < to);

    public IReadOnlyList<SeriesValue> Series(string point, DateTimeOffset from, DateTimeOffset to, long upTo = long.MaxValue) =>
        PointSeries.Of(point, Upto(1).TakeWhile(record => record.Seq <= upTo), from, to);

    public IEnumerable<JournalRecord> Corrections(long first, long last) =>
        Upto(1).Where(record => record.Body is Correction correction && correction.Target >= first && correction.Target <= last);

    /// <summary>None: replaying it takes no time.</summary>
    public State Snapshot(long upTo = long.MaxValue) => State.Empty;

    public void Keep(State state)
    {
        // See above.
    }

    public void Dispose()
    {
        // Nothing is held: what was written is still there for whoever has this journal.
    }

    private List<JournalRecord> Upto(long fromSeq)
    {
        lock (_turn)
            return _records[(int)Math.Min(Math.Max(0, fromSeq - 1), _records.Count)..];
    }
}
