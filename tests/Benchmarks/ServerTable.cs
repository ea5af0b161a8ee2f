using System.Diagnostics;
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
    /// <param name="real">How many are judged and saved as in the mill, and forwarded; the others repeat them.</param>
    public static void Print(int lines, int days, int audited, int real)
    {
        using var cluster = new Cluster(durable: true);
        cluster.Execute("postgres", $"create database {Database}");
        using var server = new Server(ServerAddress.Of(cluster.ConnectionString(Database, "lab"), "here").Value!);
        ServerSchema.Bring(server);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"PostgreSQL {cluster.Scalar(Database, "show server_version")} on this machine; {lines} lines with {days} days of hourly rounds each, audit of {audited} days"));
        using var site = BenchSite.With(0);
        site.WithDesk(desk =>
        {
            var start = Stopwatch.GetTimestamp();
            for (var hour = 0; hour < real * 24; hour++)
            {
                site.Round(desk, hour);
            }

            var records = desk.Store.Read().ToList();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"saved {records.Count:N0} records of {real} days in {Stopwatch.GetElapsedTime(start).TotalSeconds:F0} s"));
            var years = new ManyYears(desk.Site, records, real, days);
            Fill(cluster, server, years, lines);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"built in {Stopwatch.GetElapsedTime(start).TotalSeconds:F0} s: {lines * (long)years.Records:N0} records, {lines * years.Bytes / 1e9:F2} GB, {lines * years.Readings:N0} values; {Gigabytes(cluster)} on the disk"));
            Table.Header();
            Forwarding(cluster, desk.Store, records);
            Reading(cluster, server, desk, years.End, audited);
            Sizes(cluster, years.Records, lines);
            Sound(server);
        });
    }

    private static void Fill(Cluster cluster, Server server, ManyYears years, int lines)
    {
        cluster.Execute(Database, "alter system set synchronous_commit = off"); // while it is filled; the times below wait for the disk
        cluster.Execute(Database, "alter system set max_wal_size = '8GB'");
        cluster.Execute(Database, "select pg_reload_conf()");
        var address = cluster.ConnectionString(Database, "lab");
        for (var i = 1; i <= lines; i++)
        {
            ServerSchema.Admit(server, Name(i), "lab");
        }

        years.Fill(server, address, Name(1), like: null);
        Parallel.For(2, lines + 1, new ParallelOptions { MaxDegreeOfParallelism = 2 }, i => years.Fill(server, address, Name(i), like: Name(1)));
        cluster.Execute(Database, "alter system reset synchronous_commit");
        cluster.Execute(Database, "select pg_reload_conf()");
        cluster.Execute(Database, "vacuum analyze");
        cluster.Execute(Database, "checkpoint");
    }

    private static string Name(int line) => string.Create(CultureInfo.InvariantCulture, $"bench-{line}");

    /// <summary>By turns, each time into new tables: other work on the machine then meets both.</summary>
    private static void Forwarding(Cluster cluster, IJournalStore line, List<JournalRecord> records)
    {
        var (hand, bytes, forward) = (new double[Turns], new double[Turns], new double[Turns]);
        for (var i = 0; i < Turns; i++)
        {
            var database = string.Create(CultureInfo.InvariantCulture, $"turn{i}");
            cluster.Execute("postgres", $"create database {database}");
            using var server = new Server(ServerAddress.Of(cluster.ConnectionString(database, "lab"), "here").Value!);
            ServerSchema.Bring(server);
            ServerSchema.Admit(server, records[0].Chain, "lab");
            cluster.Execute(database, "create schema yard; create table yard.record (like logbook.record including all); create table yard.reading (like logbook.reading including all); create table yard.bytes (chain text, seq bigint, bytes bytea)");
            var yard = new HandCopy(cluster.ConnectionString(database, "lab"), records[0].Chain, records);
            var note = new ForwardNote(Path.Combine(Path.GetTempPath(), Path.GetRandomFileName()));
            hand[i] = Table.Time(yard.All);
            bytes[i] = Table.Time(yard.BytesAlone);
            forward[i] = Table.Time(() => new Forwarder(line, server, note, TimeProvider.System).Run(LongWork.Unwatched));
            cluster.Execute("postgres", $"drop database {database} with (force)");
        }

        var label = string.Create(CultureInfo.InvariantCulture, $"{records.Count:N0} records, {records.Sum(r => (long)r.Bytes.Length) / 1e6:F0} MB");
        Table.Row($"hand-written COPY, {label}", hand);
        Table.Row("  of the bytes alone, no hash, no readings", bytes);
        Table.Row($"forward, from the line's journal, {label}", forward);
    }

    private static void Reading(Cluster cluster, Server server, Desk here, DateTimeOffset last, int audited)
    {
        var end = last.AddMinutes(10);
        var (from, clock) = (end.AddDays(-audited), new FixedClock(end));
        using var hand = new HandSql(cluster.ConnectionString(Database, "lab"), here.Site);
        Table.Row("now of all lines, hand-written SQL", 3, () => hand.Now(end));
        Table.Row("now of all lines", 3, () => Each(server, clock, desk => NowView.Of(desk).Rounds.Count));
        Table.Row("audit of all lines, checks and corrections, SQL", 1, () => hand.Audit(from, end), warm: false);
        Table.Row("audit of all lines, checks and corrections", 1, () => Each(server, clock, desk => Audit.Between(desk, from, end, Facts).Count), warm: false);
        Table.Row("audit of all lines, every flag", 1, () => Each(server, clock, desk => Audit.Between(desk, from, end).Count), warm: false);
    }

    private static void Each(Server server, TimeProvider clock, Func<Desk, int> ask)
    {
        var answers = server.Lines().AsParallel().Select(line =>
        {
            var journal = new ServerJournal(server, line);
            var state = Replay.Forward(journal, State.Empty);
            return ask(new Desk(journal, state.Files!, [], new DeadlineGuard(), clock, "bench", state));
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

    private static string Gigabytes(Cluster cluster) => string.Create(
        CultureInfo.InvariantCulture, $"{Convert.ToDouble(cluster.Scalar(Database, "select pg_database_size(current_database())"), CultureInfo.InvariantCulture) / 1e9:F1} GB");

    /// <summary>That what was built is what a line would have forwarded: one of the copies is verified whole, with the values and states beside it.</summary>
    private static void Sound(Server server)
    {
        var line = server.Lines()[^1];
        var check = new ServerJournal(server, line).Verify();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{line.Chain}: {check.Records:N0} records are sound{(check.Ok ? "" : $", and then: {check.Why}")}"));
    }
}
