using System.Text;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;
using Microsoft.Data.Sqlite;

namespace Benchmarks;

/// <summary>The same records in SQLite, as somebody would keep them by hand, and what that person would ask: the yardstick on one machine.</summary>
internal sealed class LiteSql : IDisposable
{
    private const string Tables = """
        create table record (seq integer primary key, kind text, at integer, entered integer, by text, shift text, body text);
        create table reading (seq integer, point text, round text, at integer, entered integer, value real, why text);
        create table sheet (round text, point text, every integer);
        """;

    private const string Indexes = """
        create index reading_point on reading (point, at);
        create index reading_at on reading (at);
        create index record_kind on record (kind, at);
        create index record_at on record (at);
        """;

    // Newest values, what is open, who holds the line, what was found in the shift.
    private const string NoteText = """
        select 'value', point, value from (select point, value, max(at) from reading where at > $from - 86400 and at <= $to and value is not null group by point)
        union all
        select 'open', seq, body ->> 'text' from record r where kind = 'carry' and not exists (select 1 from record c where c.kind = 'carry-close' and c.body ->> 'id' = r.seq)
        union all
        select 'holds', by, seq from (select by, seq from record where kind in ('handover-accepted', 'handover-relief', 'handover-continued') order by seq desc limit 1)
        union all
        select 'finding', f.value ->> 'point', f.value ->> 'text' from record r, json_each(r.body, '$.findings') f where r.kind = 'entry' and r.at > $from and r.at <= $to
        """;

    // Every check of the rounds that recur: missed, typed late, not taken; and the corrections.
    private const string AuditText = """
        with recursive due (every, at) as (
            select distinct every, $from from sheet union all select every, at + every from due where at + every < $to),
        slot as materialized (select s.round, s.point, s.every, d.at as due from sheet s join due d on d.every = s.every),
        answer as materialized (select s.round, g.point, $from + ((g.at - $from + s.every / 2) / s.every) * s.every as due, g.at, g.entered, g.value, g.why, g.seq
            from reading g join sheet s on s.point = g.point where g.at >= $from and g.at < $to)
        select f.round, f.point, f.due, case when a.seq is null then 'missed' when a.value is null then 'not-taken' else 'late' end, a.why
            from slot f left join answer a on a.round = f.round and a.point = f.point and a.due = f.due
            where a.seq is null or a.value is null or a.entered > a.at + 1800
        union all
        select null, null, at, 'corrected', body ->> 'why' from record where kind = 'correction' and at >= $from and at < $to
        """;

    private readonly string _file = Path.Combine(Path.GetTempPath(), $"logbook-bench-{Guid.NewGuid():N}.db");
    private readonly SqliteConnection _connection;

    public LiteSql(Desk desk)
    {
        _connection = new SqliteConnection($"Data Source={_file};Pooling=False");
        _connection.Open();
        Run(Tables);
        using (var all = _connection.BeginTransaction())
        {
            foreach (var record in desk.Store.Read())
            {
                Add(record);
            }

            foreach (var (round, point) in desk.Site.Rounds.SelectMany(r => r.Points.Select(p => (r, p))))
            {
                Insert("sheet", round.Id, point, (long)Every(round.Schedule).TotalSeconds);
            }

            all.Commit();
        }

        Run(Indexes + "analyze;");
    }

    public long Readings { get; private set; }

    public void Note(DateTimeOffset to)
    {
        Read(NoteText, to.AddHours(-12), to);
        Read(AuditText, to.AddHours(-12), to);
    }

    public void Audit(DateTimeOffset from, DateTimeOffset to) => Read(AuditText, from, to);

    public void Dispose()
    {
        _connection.Dispose();
        File.Delete(_file);
    }

    private void Add(JournalRecord record)
    {
        var (at, entered) = (record.At.ToUnixTimeSeconds(), record.Entered.ToUnixTimeSeconds());
        using var body = System.Text.Json.JsonDocument.Parse(record.Bytes);
        Insert("record", record.Seq, record.Body.Kind, at, entered, record.By, record.Shift, body.RootElement.GetProperty("body").GetRawText());
        foreach (var reading in record.Body is Entry entry ? entry.Readings : [])
        {
            Insert("reading", record.Seq, reading.Point, ((Entry)record.Body).Round, reading.At.ToUnixTimeSeconds(), entered, reading.Value, reading.Why);
            Readings++;
        }
    }

    private readonly Dictionary<string, SqliteCommand> _inserts = new(StringComparer.Ordinal);

    private void Insert(string table, params object?[] values)
    {
        if (!_inserts.TryGetValue(table, out var insert))
        {
            insert = _inserts[table] = _connection.CreateCommand();
            insert.CommandText = $"insert into {table} values ({string.Join(", ", values.Select((_, i) => FormattableString.Invariant($"$p{i}")))})";
            insert.Parameters.AddRange(values.Select((_, i) => new SqliteParameter(FormattableString.Invariant($"$p{i}"), null)));
        }

        for (var i = 0; i < values.Length; i++)
        {
            insert.Parameters[i].Value = values[i] ?? DBNull.Value;
        }

        insert.ExecuteNonQuery();
    }

    private static TimeSpan Every(Schedule schedule) => schedule switch
    {
        Schedule.Every every => every.Interval,
        Schedule.Per { Period: "shift" } => TimeSpan.FromHours(12),
        Schedule.Per { Period: "week" } => TimeSpan.FromDays(7),
        Schedule.At at => TimeSpan.FromDays(1.0 / Math.Max(1, at.Times.Count)),
        _ => TimeSpan.FromDays(1),
    };

    private void Run(string sql)
    {
        using var command = _connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private void Read(string sql, DateTimeOffset from, DateTimeOffset to)
    {
        using var command = _connection.CreateCommand();
        command.CommandText = sql;
        command.Parameters.AddWithValue("$from", from.ToUnixTimeSeconds());
        command.Parameters.AddWithValue("$to", to.ToUnixTimeSeconds());
        using var rows = command.ExecuteReader();
        var said = new StringBuilder();
        while (rows.Read())
        {
            for (var i = 0; i < rows.FieldCount; i++)
            {
                said.Append(rows.GetValue(i));
            }

            said.AppendLine();
        }

        if (said.Length == 0)
        {
            throw new InvalidOperationException("the yardstick found nothing");
        }
    }
}
