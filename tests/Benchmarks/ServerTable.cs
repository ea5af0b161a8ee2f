using System.Globalization;
using Logbook;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.PluginHost;
using Logbook.Storage.Postgres;
using Logbook.Storage.Postgres.Tests;
using Logbook.Testing;
using Npgsql;

namespace Benchmarks;

/// <summary>A mill of many lines on one server: forwarding beside a hand-written COPY of the same rows, reading beside hand-written SQL.</summary>
internal static class ServerTable
{
    private const string Database = "bench";
    private const int Turns = 3;
    private static readonly string[] Facts = ["missed", "late", "not-taken", "corrected"];

    /// <param name="lines">How many lines there are.</param>
    /// <param name="days">How many days of hourly rounds each has.</param>
    /// <param name="audited">How many of them the audit covers.</param>
    public static void Print(int lines, int days, int audited)
    {
        using var cluster = new Cluster(durable: true);
        cluster.Execute("postgres", $"create database {Database}");
        using var server = new Server(ServerAddress.Of(cluster.ConnectionString(Database, "lab"), "here").Value!);
        ServerSchema.Bring(server);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"PostgreSQL {cluster.Scalar(Database, "show server_version")} on this machine; {lines} lines with {days} days of hourly rounds each, audit of {audited} days"));
        Table.Header();
        using var site = BenchSite.With(0);
        site.WithDesk(desk =>
        {
            for (var hour = 0; hour < days * 24; hour++)
            {
                site.Round(desk, hour);
            }

            var records = desk.Store.Read().ToList();
            Forwarding(cluster, server, desk.Store, records);
            Fill(server, records, lines);
            cluster.Execute(Database, "vacuum analyze");
            Reading(cluster, server, desk, records, audited);
            Sizes(cluster, records.Count, lines);
        });
    }

    /// <summary>By turns, each time into new tables: other work on the machine then meets both.</summary>
    private static void Forwarding(Cluster cluster, Server last, IJournalStore line, List<JournalRecord> records)
    {
        var (hand, bytes, forward) = (new double[Turns], new double[Turns], new double[Turns]);
        for (var i = 0; i < Turns; i++)
        {
            var database = i == Turns - 1 ? Database : string.Create(CultureInfo.InvariantCulture, $"turn{i}");
            if (database != Database)
            {
                cluster.Execute("postgres", $"create database {database}");
            }

            using var own = new Server(ServerAddress.Of(cluster.ConnectionString(database, "lab"), "here").Value!);
            var server = database == Database ? last : own;
            ServerSchema.Bring(server);
            ServerSchema.Admit(server, records[0].Chain, "lab");
            cluster.Execute(database, "create schema yard; create table yard.record (like logbook.record including all); create table yard.reading (like logbook.reading including all); create table yard.bytes (chain text, seq bigint, bytes bytea)");
            var yard = new HandCopy(cluster.ConnectionString(database, "lab"), records[0].Chain, records);
            var note = new ForwardNote(Path.Combine(Path.GetTempPath(), Path.GetRandomFileName()));
            hand[i] = Table.Time(yard.All);
            bytes[i] = Table.Time(yard.BytesAlone);
            forward[i] = Table.Time(() => new Forwarder(line, server, note, TimeProvider.System).Run(LongWork.Unwatched));
            cluster.Execute(database, "drop schema yard cascade");
        }

        var label = string.Create(CultureInfo.InvariantCulture, $"{records.Count:N0} records, {records.Sum(r => (long)r.Bytes.Length) / 1e6:F0} MB");
        Table.Row($"hand-written COPY, {label}", hand);
        Table.Row("  of the bytes alone, no hash, no readings", bytes);
        Table.Row($"forward, from the line's journal, {label}", forward);
    }

    /// <summary>The other lines say the same under their own names.</summary>
    private static void Fill(Server server, List<JournalRecord> records, int lines)
    {
        for (var i = 2; i <= lines; i++)
        {
            var chain = string.Create(CultureInfo.InvariantCulture, $"bench-{i}");
            using var copy = new InMemoryJournal();
            foreach (var r in records)
            {
                copy.Append(new RecordDraft(r.Body, chain, r.At, r.Entered, r.Shift, r.By, r.Terminal));
            }

            ServerSchema.Admit(server, chain, "lab");
            new Forwarder(copy, server, new ForwardNote(Path.Combine(Path.GetTempPath(), Path.GetRandomFileName())), TimeProvider.System).Run(LongWork.Unwatched);
        }
    }

    private static void Reading(Cluster cluster, Server server, Desk here, List<JournalRecord> records, int audited)
    {
        var end = records[^1].At.AddMinutes(10);
        var (from, clock) = (end.AddDays(-audited), new FixedClock(end));
        using var hand = new HandSql(cluster.ConnectionString(Database, "lab"), here.Site);
        Table.Row("now of all lines, hand-written SQL", 5, () => hand.Now(end));
        Table.Row("now of all lines", 5, () => Each(server, clock, desk => NowView.Of(desk).Rounds.Count));
        Table.Row("audit of all lines, checks and corrections, SQL", 1, () => hand.Audit(from, end), warm: false);
        Table.Row("audit of all lines, checks and corrections", 1, () => Each(server, clock, desk => Audit.Between(desk, from, end, Facts).Count), warm: false);
        Table.Row("audit of all lines, every flag", 1, () => Each(server, clock, desk => Audit.Between(desk, from, end).Count), warm: false);
    }

    private static void Each(Server server, TimeProvider clock, Func<Desk, int> ask)
    {
        var answers = server.Lines().AsParallel().Select(line =>
        {
            var journal = new ServerJournal(server, line);
            var desk = new Desk(journal, Replay.Forward(journal, State.Empty).Files!, [], new DeadlineGuard(), clock, "bench");
            desk.Follow();
            return ask(desk);
        }).ToList();
        if (answers.TrueForAll(a => a == 0))
        {
            throw new InvalidOperationException("the benchmark's lines have nothing to say");
        }
    }

    private static void Sizes(Cluster cluster, int records, int lines)
    {
        double Of(string what) => Convert.ToDouble(cluster.Scalar(Database, $"select sum(pg_total_relation_size(c.oid)) from pg_class c join pg_namespace n on n.oid = c.relnamespace where n.nspname = 'logbook' and c.relkind = 'r' and c.relname like '{what}\\_%'"), CultureInfo.InvariantCulture) / records / lines;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"on the server's disk for each round: {Of("record"):N0} bytes of records, {Of("reading"):N0} bytes of readings, indexes included"));
    }
}
