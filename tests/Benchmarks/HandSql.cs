using System.Globalization;
using Logbook.Plant;
using Npgsql;
using NpgsqlTypes;

namespace Benchmarks;

/// <summary>What somebody would ask the server by hand, for all lines in one statement each: the yardstick for what the program reads.</summary>
internal sealed class HandSql : IDisposable
{
    // Newest values, what is open, who holds the line, what stands out, what the shift has of its rounds.
    private const string NowText =
        """
        select chain, 'value' as what, point as name, value::text as said from (
            select distinct on (chain, point) chain, point, value from logbook.reading
            where at > $1 - interval '36 hours' and at <= $1 and value is not null order by chain, point, at desc, seq desc) v
        union all
        select r.chain, 'open', r.seq::text, convert_from(r.bytes, 'UTF8')::json -> 'body' ->> 'text' from logbook.record r
            where r.kind = 'carry' and not exists (select from logbook.record c where c.chain = r.chain and c.kind = 'carry-close'
                and (convert_from(c.bytes, 'UTF8')::json -> 'body' ->> 'id')::bigint = r.seq)
        union all
        select * from (select distinct on (chain) chain, 'holds', kind, convert_from(bytes, 'UTF8')::json ->> 'by' from logbook.record
            where kind in ('handover-accepted', 'handover-relief', 'handover-continued') order by chain, seq desc) h
        union all
        select r.chain, 'finding', f ->> 'point', f ->> 'text' from logbook.record r, json_array_elements(convert_from(r.bytes, 'UTF8')::json -> 'body' -> 'findings') f
            where r.kind = 'entry' and r.at > $1 - interval '12 hours' and r.at <= $1
        union all
        select e.chain, 'round', convert_from(e.bytes, 'UTF8')::json -> 'body' ->> 'round', count(*)::text from logbook.record e
            join logbook.reading g on g.chain = e.chain and g.seq = e.seq
            where e.kind = 'entry' and e.at > $1 - interval '12 hours' and e.at <= $1 group by 1, 2, 3
        """;

    // Every check of the rounds that recur: missed, typed late, not taken; and the corrections.
    private const string AuditText =
        """
        with sheet as (select * from unnest($3::text[], $4::text[], $5::interval[]) as s (round, point, every)),
        slot as (select l.chain, s.round, s.point, s.every, due from logbook.line l cross join sheet s
            cross join lateral generate_series(date_trunc('day', $1::timestamptz), $2::timestamptz, s.every) due),
        answer as (select g.chain, s.round, g.point, date_bin(s.every, g.at + s.every / 2, date_trunc('day', $1::timestamptz)) due, g.at, g.seq, g.value, g.why
            from logbook.reading g join sheet s on s.point = g.point where g.at >= $1 and g.at < $2 and not g.derived and g.corrects is null),
        found as (select slot.*, a.seq, a.value, a.why, a.at from slot left join answer a using (chain, round, point, due))
        select f.chain, f.round, f.point, f.due, case when f.seq is null then 'missed' when f.value is null then 'not-taken' else 'late' end, f.why from found f
            left join logbook.record r on r.chain = f.chain and r.seq = f.seq
            where f.seq is null or f.value is null or r.entered > f.at + interval '30 minutes'
        union all
        select chain, null, null, at, 'corrected', convert_from(bytes, 'UTF8')::json -> 'body' ->> 'why' from logbook.record where corrects is not null and at >= $1 and at < $2
        """;

    private readonly NpgsqlConnection _connection;
    private readonly List<(string Round, string Point, TimeSpan Every)> _sheet;

    public HandSql(string address, Site site)
    {
        _connection = new NpgsqlConnection(address + ";Command Timeout=0");
        _connection.Open();
        _sheet = [.. site.Rounds.SelectMany(r => r.Points.Select(p => (r.Id, p, Every(r.Schedule))))];
    }

    public void Now(DateTimeOffset at) => Read(NowText, Time(at));

    public void Audit(DateTimeOffset from, DateTimeOffset to) => Read(
        AuditText, Time(from), Time(to), new() { Value = _sheet.Select(s => s.Round).ToArray() }, new() { Value = _sheet.Select(s => s.Point.ToUpperInvariant()).ToArray() },
        new() { Value = _sheet.Select(s => s.Every).ToArray(), NpgsqlDbType = NpgsqlDbType.Array | NpgsqlDbType.Interval });

    public void Dispose() => _connection.Dispose();

    private static TimeSpan Every(Schedule schedule) => schedule switch
    {
        Schedule.Every every => every.Interval,
        Schedule.Per { Period: "shift" } => TimeSpan.FromHours(12),
        Schedule.Per { Period: "week" } => TimeSpan.FromDays(7),
        Schedule.At at => TimeSpan.FromDays(1.0 / Math.Max(1, at.Times.Count)),
        _ => TimeSpan.FromDays(1),
    };

    private static NpgsqlParameter Time(DateTimeOffset at) => new() { Value = at.UtcDateTime, NpgsqlDbType = NpgsqlDbType.TimestampTz };

    private void Read(string sql, params NpgsqlParameter[] parameters)
    {
        using var command = new NpgsqlCommand(sql, _connection);
        command.Parameters.AddRange(parameters);
        using var rows = command.ExecuteReader();
        var count = 0L;
        while (rows.Read())
        {
            count += rows.GetString(0).Length;
        }

        if (count == 0)
        {
            throw new InvalidOperationException("the yardstick found nothing: " + sql[..40].ToString(CultureInfo.InvariantCulture));
        }
    }
}
