using System.Text;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Storage.Postgres;
using Npgsql;

namespace Benchmarks;

/// <summary>
/// Years of many lines, made fast. One line's rounds, judged and saved as in the mill, are told again, moved in time, until the
/// years are full: the same readings, each with its own times, shift and place in the chain. The other lines say the same under
/// their own names, in chains of their own. What the server checks of records that arrive it checks of these too.
/// </summary>
internal sealed class ManyYears
{
    // As the forwarder does.
    private const int Batch = 500;
    private const int KeepAlways = 4096;

    private readonly List<(RecordRow Record, IReadOnlyList<ReadingRow> Readings)> _rows = [];
    private readonly List<State> _kept = [];
    private readonly string _chain;

    /// <param name="real">What was saved in the mill's way, from the first record on.</param>
    public ManyYears(Site site, IReadOnlyList<JournalRecord> real, int realDays, int days)
    {
        _chain = real[0].Chain;
        var state = State.Empty;
        foreach (var draft in Drafts(site, real, realDays, days))
        {
            var record = JournalRecord.Seal(draft, state.Head);
            state = state.Apply(record);
            _rows.Add((RecordRow.Of(record), [.. ReadingRow.Of(record)]));
            if (record.Seq % KeepAlways == 0)
            {
                _kept.Add(state);
            }
        }

        _kept.Add(state);
        End = state.LatestEntered;
    }

    public int Records => _rows.Count;

    public long Bytes => _rows.Sum(r => (long)r.Record.Bytes.Length);

    public long Readings => _rows.Sum(r => (long)r.Readings.Count);

    /// <summary>When the last record was typed.</summary>
    public DateTimeOffset End { get; }

    /// <summary>Brings them to the server as a line of this name, which was admitted, by COPY.</summary>
    /// <param name="like">A line that is there already and has the same values: the server copies them itself, indexes last.</param>
    public void Fill(Server server, string address, string chain, string? like)
    {
        var ids = server.Lines().ToDictionary(l => l.Chain, l => l.Id, StringComparer.Ordinal);
        using var connection = new NpgsqlConnection(address + ";Command Timeout=0");
        connection.Open();
        if (like is not null)
        {
            CopyReadings(connection, ids[chain], ids[like], chain);
        }

        var head = Head.Empty;
        var heads = new Dictionary<long, Head>();
        foreach (var batch in _rows.Chunk(Batch))
        {
            using var transaction = connection.BeginTransaction();
            if (like is null)
            {
                Copy(connection, $"logbook.reading_{ids[chain]} ({ReadingRow.Columns})", batch.SelectMany(r => r.Readings), (copy, reading) => reading.Write(copy, chain));
            }

            Copy(connection, $"logbook.record_{ids[chain]} ({RecordRow.Columns})", batch, (copy, row) =>
            {
                var bytes = Renamed(row.Record.Bytes.Span, chain, head);
                head = heads[row.Record.Seq] = new(row.Record.Seq, JournalRecord.HashOf(bytes));
                (row.Record with { Bytes = bytes }).Write(copy, chain);
            });
            transaction.Commit();
        }

        foreach (var state in _kept)
        {
            Keep(connection, chain, state with { Head = heads[state.Head.Seq] }); // the rest of it is the same for each line
        }
    }

    private static void CopyReadings(NpgsqlConnection connection, int id, int from, string chain)
    {
        var columns = ReadingRow.Columns["chain".Length..];
        foreach (var step in (string[])
        [
            $"drop table logbook.reading_{id}",
            $"create table logbook.reading_{id} (like logbook.reading)",
            $"insert into logbook.reading_{id} (chain{columns}) select '{chain}'{columns} from logbook.reading_{from}",
            $"alter table logbook.reading attach partition logbook.reading_{id} for values in ('{chain}')",
        ])
        {
            using var command = new NpgsqlCommand(step, connection);
            command.ExecuteNonQuery();
        }
    }

    private static void Keep(NpgsqlConnection connection, string chain, State state)
    {
        using var keep = new NpgsqlCommand("select logbook.keep($1, $2, $3, $4, $5)", connection)
        {
            Parameters = { new() { Value = chain }, new() { Value = state.Head.Seq }, new() { Value = Convert.FromHexString(state.Head.Hash) }, new() { Value = StateForm.Fold }, new() { Value = StateForm.Write(state) } },
        };
        keep.ExecuteNonQuery();
    }

    private static void Copy<T>(NpgsqlConnection connection, string into, IEnumerable<T> rows, Action<NpgsqlBinaryImporter, T> write)
    {
        using var copy = connection.BeginBinaryImport($"copy {into} from stdin (format binary)");
        foreach (var row in rows)
        {
            write(copy, row);
        }

        copy.Complete();
    }

    /// <summary>The same record in another line's chain. Both members stand after the body, so the last of their name is theirs.</summary>
    private byte[] Renamed(ReadOnlySpan<byte> record, string chain, Head before)
    {
        var (own, name) = (Encoding.UTF8.GetBytes($"\"chain\":\"{_chain}\""), Encoding.UTF8.GetBytes($"\"chain\":\"{chain}\""));
        var link = "\"prev\":\""u8;
        var (at, prev) = (record.LastIndexOf(own), record.LastIndexOf(link) + link.Length);
        byte[] renamed = [.. record[..at], .. name, .. record[(at + own.Length)..prev], .. Encoding.ASCII.GetBytes(before.Hash), .. record[(prev + before.Hash.Length)..]];
        return renamed;
    }

    /// <summary>The records, and their entries again and again, moved in time.</summary>
    public static IEnumerable<RecordDraft> Drafts(Site site, IReadOnlyList<JournalRecord> real, int realDays, int days)
    {
        for (var told = 0; told < days; told += realDays)
        {
            var (by, end) = (TimeSpan.FromDays(told), real[0].Entered.AddDays(days));
            foreach (var record in real.Where(r => told == 0 || r.Body is Entry).TakeWhile(r => r.Entered + by < end))
            {
                var at = Given.Instant(site, record.At + by);
                yield return new(Moved(record.Body, by), record.Chain, at, record.Entered + by, Calendar.ShiftAt(site, at).Id, record.By, record.Terminal);
            }
        }
    }

    private static RecordBody Moved(RecordBody body, TimeSpan by) => body is Entry entry
        ? entry with { Readings = [.. entry.Readings.Select(r => r with { At = r.At + by })] }
        : body;
}
