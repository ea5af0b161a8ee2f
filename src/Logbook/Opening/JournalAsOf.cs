using Logbook.Journal;

namespace Logbook;

/// <summary>The journal as it stood at a time: what was entered later is not there.</summary>
internal sealed class JournalAsOf(IJournalStore whole, DateTimeOffset then) : IJournalStore
{
    private Head? _head; // the past does not change any more

    public Head Head => _head ??= Replay.AsOf(whole, then).Head;

    public JournalRecord Append(RecordDraft draft) => throw new InvalidOperationException("the past is read only");

    public IEnumerable<JournalRecord> Read(long fromSeq = 1) => Then(whole.Read(fromSeq));

    public IEnumerable<JournalRecord> Between(DateTimeOffset from, DateTimeOffset to) => Then(whole.Between(from, to));

    public IEnumerable<ReadOnlyMemory<byte>> Bytes(long fromSeq = 1) => Read(fromSeq).Select(r => r.Bytes);

    public ChainCheck Verify(LongWork? work = null) => Chain.Verify(Bytes());

    public IReadOnlyList<SeriesValue> Series(string point, DateTimeOffset from, DateTimeOffset to, long upTo = long.MaxValue) =>
        whole.Series(point, from, to, Math.Min(upTo, Head.Seq));

    public IEnumerable<JournalRecord> Corrections(long first, long last) => Then(whole.Corrections(first, last));

    public State Snapshot(long upTo = long.MaxValue) => Replay.SnapshotAsOf(whole, then, upTo);

    public void Keep(State state)
    {
        // The journal itself keeps what is worth it.
    }

    public void Dispose() => whole.Dispose();

    private IEnumerable<JournalRecord> Then(IEnumerable<JournalRecord> records) => records.TakeWhile(r => r.Seq <= Head.Seq);
}

/// <summary>A clock that stands still.</summary>
internal sealed class FixedClock(DateTimeOffset at) : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => at.ToUniversalTime();
}
