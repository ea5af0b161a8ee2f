using Logbook.Journal;
using Npgsql;

namespace Logbook.Storage.Postgres;

/// <summary>Reads a line's whole chain on the server, and what stands beside it: what finds records, what they say of points, the states that were kept.</summary>
internal static class ServerCheck
{
    private const int BatchSize = 512;

    private sealed record Found(RecordRow Record, string Hash, IReadOnlyList<ReadingRow> Readings);

    public static ChainCheck Run(Server server, ServerLine line, LongWork work, Action<JournalRecord> sound)
    {
        var states = server.Query(
            $"the states kept of {line.Chain} cannot be read", "select seq, bytes from logbook.state where chain = $1 and fold = $2",
            row => (Seq: row.GetInt64(0), Bytes: row.GetFieldValue<byte[]>(1)), Text(line.Chain), Text(StateForm.Fold)).ToDictionary(s => s.Seq, s => s.Bytes);
        var state = State.Empty;
        Found? current = null;
        var anchor = line.Head.Seq > 0 ? line.Head : null;
        var check = Chain.Verify(All(server, line, found => current = found), anchor, record =>
        {
            work.Reached(record.Seq);
            sound(record);
            state = states.Count > 0 ? state.Apply(record) : state;
            return WhyNot(current!, record) ?? WhyNot(states, state, record.Seq);
        });
        return check.Ok && Stray(server, line)
            ? check with { FirstBad = check.Records + 1, Why = "every record is sound, but readings stand there for records that never came" }
            : check;
    }

    private static bool Stray(Server server, ServerLine line) => server.Query(
        $"the readings of {line.Chain} cannot be read",
        "select exists (select from logbook.reading where chain = $1 and seq > (select seq from logbook.line where chain = $1))",
        row => row.GetBoolean(0), Text(line.Chain)).Single();

    private static string? WhyNot(Found found, JournalRecord record)
    {
        var expected = RecordRow.Of(record);
        if (found.Record with { Bytes = expected.Bytes } != expected || found.Hash != record.Hash)
            return $"record {record.Seq} is sound, but the columns that find it were changed";
        return found.Readings.SequenceEqual(ReadingRow.Of(record))
            ? null
            : $"record {record.Seq} is sound, but the readings beside it are not what it says";
    }

    private static string? WhyNot(Dictionary<long, byte[]> states, State state, long seq) =>
        states.TryGetValue(seq, out var kept) && !kept.AsSpan().SequenceEqual(StateForm.Write(state))
            ? $"record {seq} is sound, but the state kept of it does not follow from the records: an administrator deletes it from logbook.state"
            : null;

    private static IEnumerable<ReadOnlyMemory<byte>> All(Server server, ServerLine line, Action<Found> next)
    {
        for (var from = 1L; ; from += BatchSize)
        {
            var (first, last) = (from, from + BatchSize - 1);
            var readings = server.Query(
                $"the readings of {line.Chain} cannot be read",
                "select seq, n, point, at, value, unit, typed, why, derived, corrects from logbook.reading where chain = $1 and seq between $2 and $3 order by seq, n",
                Reading, Text(line.Chain), Number(first), Number(last)).ToLookup(r => r.Seq);
            var records = server.Query(
                $"{line.Chain} cannot be read from the server",
                "select seq, kind, at, entered, corrects, bytes, hash from logbook.record where chain = $1 and seq between $2 and $3 order by seq",
                Record, Text(line.Chain), Number(first), Number(last));
            foreach (var (record, hash) in records)
            {
                next(new(record, hash, [.. readings[record.Seq]]));
                yield return record.Bytes;
            }

            if (records.Count < BatchSize)
                yield break;
        }
    }

    private static (RecordRow Record, string Hash) Record(NpgsqlDataReader row) => (
        new(row.GetInt64(0), row.GetString(1), Time(row, 2), Time(row, 3), Maybe(row, 4), row.GetFieldValue<byte[]>(5)),
        Convert.ToHexStringLower(row.GetFieldValue<byte[]>(6)));

    private static ReadingRow Reading(NpgsqlDataReader row) => new(
        row.GetInt64(0), row.GetInt32(1), row.GetString(2), Time(row, 3), row.IsDBNull(4) ? null : row.GetDouble(4), row.GetString(5),
        row.IsDBNull(6) ? null : row.GetString(6), row.IsDBNull(7) ? null : row.GetString(7), row.GetBoolean(8), Maybe(row, 9));

    private static DateTimeOffset Time(NpgsqlDataReader row, int column) => new(row.GetDateTime(column));

    private static long? Maybe(NpgsqlDataReader row, int column) => row.IsDBNull(column) ? null : row.GetInt64(column);

    private static NpgsqlParameter<string> Text(string text) => new() { TypedValue = text };

    private static NpgsqlParameter<long> Number(long number) => new() { TypedValue = number };
}
