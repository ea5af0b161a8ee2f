using Logbook.Journal;

namespace Logbook;

/// <summary>The journal as it stood at a time: what was entered later is not there.</summary>
internal sealed class JournalAsOf(IJournalStore whole, DateTimeOffset then) : IJournalStore
{
    public Head Head
    {
        get
        {
            var last = Read().LastOrDefault();
            return last is null ? Head.Empty : new Head(last.Seq, last.Hash);
        }
    }

    public JournalRecord Append(RecordDraft draft) => throw new InvalidOperationException("the past is read only");

    public IEnumerable<JournalRecord> Read(long fromSeq = 1) => whole.Read(fromSeq).TakeWhile(r => r.Entered <= then);

    public IEnumerable<JournalRecord> Between(DateTimeOffset from, DateTimeOffset to) => whole.Between(from, to).TakeWhile(r => r.Entered <= then);

    public IEnumerable<ReadOnlyMemory<byte>> Bytes(long fromSeq = 1) => Read(fromSeq).Select(r => r.Bytes);

    public ChainCheck Verify() => Chain.Verify(Bytes());

    public IReadOnlyList<SeriesValue> Series(string point, DateTimeOffset from, DateTimeOffset to) => PointSeries.Of(point, Read(), from, to);

    public void Dispose() => whole.Dispose();
}

/// <summary>A clock that stands still.</summary>
internal sealed class FixedClock(DateTimeOffset at) : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => at.ToUniversalTime();
}
