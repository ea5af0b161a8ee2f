using Logbook.Journal;
using Microsoft.Data.Sqlite;

namespace Benchmarks;

/// <summary>
/// The same rounds in SQLite, as somebody would lay them out who wants fast saves and fast questions: no chain, no bytes to
/// export, and each value once, in the order of its point. WAL, and as durable as the journal: synchronous=FULL.
/// </summary>
internal sealed class SqliteYardstick : IDisposable
{
    private const string Tables =
        """
        create table point (id integer primary key, tag text not null unique, unit text not null);
        create table entry (seq integer primary key, at integer not null, entered integer not null, offset integer not null, shift text, person text, terminal text, round text);
        create table reading (point integer not null, at integer not null, seq integer not null, typed text, value real, why text, primary key (point, at, seq)) without rowid;
        """;

    private readonly Dictionary<string, long> _points = new(StringComparer.Ordinal);
    private readonly SqliteConnection _connection;
    private readonly SqliteCommand _entry;
    private readonly SqliteCommand _reading;
    private readonly SqliteCommand _point;
    private readonly SqliteCommand _shift;
    private readonly SqliteCommand _last;
    private readonly SqliteCommand _months;
    private SqliteTransaction? _bulk;
    private long _seq;

    public SqliteYardstick(string path)
    {
        var isNew = !File.Exists(path);
        _connection = new SqliteConnection($"Data Source={path};Pooling=False");
        _connection.Open();
        Run("pragma journal_mode = wal; pragma synchronous = full;");
        if (isNew)
        {
            Run(Tables);
        }

        _seq = (long)Command("select coalesce(max(seq), 0) from entry").ExecuteScalar()!;
        using (var points = Command("select tag, id from point").ExecuteReader())
        {
            while (points.Read())
            {
                _points[points.GetString(0)] = points.GetInt64(1);
            }
        }

        _entry = Command("insert into entry values (@seq, @at, @entered, @offset, @shift, @person, @terminal, @round)");
        _reading = Command("insert into reading values (@point, @at, @seq, @typed, @value, @why)");
        _point = Command("insert into point (tag, unit) values (@tag, @unit) returning id");
        _shift = Command("select p.tag, r.at, r.typed, r.value, r.why, p.unit from point p join reading r on r.point = p.id and r.at >= @from and r.at < @to order by r.at");
        _last = Command("select at, typed, value from reading where point = (select id from point where tag = @tag) and value is not null order by at desc limit 50");
        _months = Command("select strftime('%Y-%m', at / 1000, 'unixepoch'), count(value), avg(value), min(value), max(value) from reading where point = (select id from point where tag = @tag) group by 1 order by 1");
    }

    /// <summary>One round in one transaction; inside a bulk, in that.</summary>
    public void Save(RecordDraft draft)
    {
        if (draft.Body is not Entry entry)
        {
            return;
        }

        using var own = _bulk is null ? _connection.BeginTransaction() : null;
        var transaction = _bulk ?? own!;
        Execute(_entry, transaction, ++_seq, draft.At.ToUnixTimeMilliseconds(), draft.Entered.ToUnixTimeMilliseconds(), (long)draft.At.Offset.TotalMinutes, draft.Shift, draft.By, draft.Terminal, entry.Round);
        foreach (var reading in entry.Readings)
        {
            Execute(_reading, transaction, IdOf(reading, transaction), reading.At.ToUnixTimeMilliseconds(), _seq, reading.Typed, reading.Value, reading.Why);
        }

        own?.Commit();
    }

    public void BeginBulk() => _bulk = _connection.BeginTransaction();

    public void EndBulk()
    {
        _bulk!.Commit();
        _bulk.Dispose();
        _bulk = null;
        Run("pragma wal_checkpoint(truncate)");
    }

    public int Shift(DateTimeOffset from, DateTimeOffset to) => Rows(_shift, from.ToUnixTimeMilliseconds(), to.ToUnixTimeMilliseconds());

    public int Last50(string tag) => Rows(_last, tag);

    public int Months(string tag) => Rows(_months, tag);

    public void Dispose() => _connection.Dispose();

    private long IdOf(Reading reading, SqliteTransaction transaction)
    {
        if (!_points.TryGetValue(reading.Point, out var id))
        {
            Fill(_point, transaction, reading.Point, reading.Unit);
            _points[reading.Point] = id = (long)_point.ExecuteScalar()!;
        }

        return id;
    }

    private static int Rows(SqliteCommand command, params object?[] values)
    {
        Fill(command, null, values);
        using var reader = command.ExecuteReader();
        var (rows, row) = (0, new object[reader.FieldCount]);
        while (reader.Read())
        {
            reader.GetValues(row);
            rows++;
        }

        return rows;
    }

    private static void Execute(SqliteCommand command, SqliteTransaction transaction, params object?[] values)
    {
        Fill(command, transaction, values);
        command.ExecuteNonQuery();
    }

    private static void Fill(SqliteCommand command, SqliteTransaction? transaction, params object?[] values)
    {
        command.Transaction = transaction;
        for (var i = 0; i < values.Length; i++)
        {
            command.Parameters[i].Value = values[i] ?? DBNull.Value;
        }
    }

    private SqliteCommand Command(string text)
    {
        var command = _connection.CreateCommand();
        command.CommandText = text;
        foreach (var name in text.Split(' ', ',', '(', ')').Where(word => word.StartsWith('@')).Distinct(StringComparer.Ordinal))
        {
            command.Parameters.Add(new SqliteParameter(name, null));
        }

        return command;
    }

    private void Run(string text)
    {
        using var command = _connection.CreateCommand();
        command.CommandText = text;
        command.ExecuteNonQuery();
    }
}
