using Logbook.Journal;
using Npgsql;
using NpgsqlTypes;

namespace Logbook.Storage.Postgres;

/// <summary>
/// A line's records as the server holds them, to read. Long reads go in batches: records are only ever added, so what comes out
/// is the chain as it was at the last batch.
/// </summary>
public sealed class ServerJournal(Server server, ServerLine line) : IJournalStore
{
    // Most reads want one record or the few new ones.
    private const int FirstBatch = 16;
    private const int BatchSize = 512;

    private readonly NpgsqlParameter<string> _chain = new() { TypedValue = line.Chain };

    public ServerLine Line => line;

    public Head Head => Query("select seq, hash from logbook.line where chain = $1", row => ServerLine.HeadOf(row.GetInt64(0), row.GetFieldValue<byte[]>(1))).Single();

    public JournalRecord Append(RecordDraft draft) =>
        throw new JournalException(JournalTrouble.Unreadable, "the server is read from; a line writes in its own journal, which is forwarded; nothing was saved");

    public IEnumerable<JournalRecord> Read(long fromSeq = 1)
    {
        Head? head = fromSeq <= 1 ? Head.Empty : null;
        foreach (var (seq, bytes) in Batches(fromSeq))
        {
            var record = Parse(seq, bytes);
            if (head is not null && Chain.WhyNot(record, head) is { } why)
                throw new JournalException(JournalTrouble.Damaged, $"{line.Chain} on the server: {why}");
            head = Head.Of(record);
            yield return record;
        }
    }

    public IEnumerable<ReadOnlyMemory<byte>> Bytes(long fromSeq = 1)
    {
        foreach (var (_, bytes) in Batches(fromSeq))
            yield return bytes;
    }

    public ChainCheck Verify(LongWork? work = null) => Verify(work ?? LongWork.Unwatched, _ => { });

    /// <summary>As <see cref="Verify(LongWork?)"/>, and hands over each record that is sound on the way.</summary>
    public ChainCheck Verify(LongWork work, Action<JournalRecord> sound) => ServerCheck.Run(server, line, work, sound);

    public IEnumerable<JournalRecord> Between(DateTimeOffset from, DateTimeOffset to) =>
        Records(Query("select seq from logbook.record where chain = $1 and at >= $2 and at < $3 order by seq", row => row.GetInt64(0), Time(from), Time(to)));

    public IReadOnlyList<SeriesValue> Series(string point, DateTimeOffset from, DateTimeOffset to, long upTo = long.MaxValue)
    {
        var tag = new NpgsqlParameter<string> { TypedValue = ReadingRow.Tag(point) };
        var series = new PointSeries(point);
        Add(series, Query(Speaking, row => row.GetInt64(0), tag, Time(from), Time(to), new NpgsqlParameter<long> { TypedValue = upTo }));
        Add(series, Correcting(series.Entries, upTo));

        // A correction may bring a reading into the range whose entry lies outside.
        if (series.Missing.Where(seq => seq <= upTo).ToList() is { Count: > 0 } missing)
        {
            Add(series, missing);
            Add(series, Correcting(missing, upTo));
        }

        return series.Between(from, to);
    }

    public IEnumerable<JournalRecord> Corrections(long first, long last) => Records(Query(
        "select seq from logbook.record where chain = $1 and corrects between $2 and $3 order by seq",
        row => row.GetInt64(0), new NpgsqlParameter<long> { TypedValue = first }, new NpgsqlParameter<long> { TypedValue = last }));

    public State Snapshot(long upTo = long.MaxValue) => Query(
        """
        select s.bytes from logbook.state s join logbook.record r on r.chain = s.chain and r.seq = s.seq and r.hash = s.hash
        where s.chain = $1 and s.fold = $2 and s.seq <= $3 order by s.seq desc limit 1
        """,
        row => row.GetFieldValue<byte[]>(0), new NpgsqlParameter<string> { TypedValue = StateForm.Fold }, new NpgsqlParameter<long> { TypedValue = upTo })
        .Select(bytes => StateForm.Read(bytes)).FirstOrDefault() ?? State.Empty;

    public void Keep(State state)
    {
        // Who forwards keeps states there; a reader has no right to write.
    }

    public void Dispose()
    {
        // The server is the caller's.
    }

    // An entry's own values have the entry's time, even where a correction first gave them.
    private const string Speaking =
        """
        select seq from logbook.reading where chain = $1 and point = $2 and at >= $3 and at < $4 and seq <= $5
        union
        select c.seq from logbook.reading c join logbook.record e on e.chain = $1 and e.seq = c.corrects
        where c.chain = $1 and c.point = $2 and c.corrects is not null and e.at >= $3 and e.at < $4 and c.seq <= $5
        order by 1
        """;

    internal static JournalRecord Parse(long seq, byte[] bytes)
    {
        try
        {
            return JournalRecord.Parse(bytes);
        }
        catch (FormatException broken)
        {
            throw new JournalException(JournalTrouble.Damaged, $"record {seq} on the server cannot be read: {broken.Message}", broken);
        }
    }

    private static NpgsqlParameter Time(DateTimeOffset time) => new() { Value = time.UtcDateTime, NpgsqlDbType = NpgsqlDbType.TimestampTz };

    private static NpgsqlParameter Seqs(IEnumerable<long> seqs) => new() { Value = seqs.ToArray(), NpgsqlDbType = NpgsqlDbType.Array | NpgsqlDbType.Bigint };

    private List<long> Correcting(IEnumerable<long> entries, long upTo) => Query(
        "select seq from logbook.record where chain = $1 and corrects = any($2) and seq <= $3", row => row.GetInt64(0), Seqs(entries), new NpgsqlParameter<long> { TypedValue = upTo });

    private void Add(PointSeries series, IReadOnlyList<long> seqs)
    {
        foreach (var record in Records(seqs))
            series.Add(record);
    }

    private IEnumerable<JournalRecord> Records(IReadOnlyList<long> seqs)
    {
        foreach (var some in seqs.Chunk(BatchSize))
        {
            var batch = Query("select seq, bytes from logbook.record where chain = $1 and seq = any($2) order by seq", Row, Seqs(some));
            foreach (var (seq, bytes) in batch)
                yield return Parse(seq, bytes);
        }
    }

    private IEnumerable<(long Seq, byte[] Bytes)> Batches(long fromSeq)
    {
        for (var (next, size) = (Math.Max(1, fromSeq), FirstBatch); ; size = BatchSize)
        {
            var batch = Query(
                "select seq, bytes from logbook.record where chain = $1 and seq >= $2 order by seq limit $3",
                Row, new NpgsqlParameter<long> { TypedValue = next }, new NpgsqlParameter<int> { TypedValue = size });
            foreach (var one in batch)
                yield return one;
            if (batch.Count < size)
                yield break;
            next = batch[^1].Seq + 1;
        }
    }

    private static (long Seq, byte[] Bytes) Row(NpgsqlDataReader row) => (row.GetInt64(0), row.GetFieldValue<byte[]>(1));

    private List<T> Query<T>(string sql, Func<NpgsqlDataReader, T> row, params NpgsqlParameter[] parameters) =>
        server.Query($"{line.Chain} cannot be read from the server", sql, row, [(NpgsqlParameter)_chain.Clone(), .. parameters]);
}
