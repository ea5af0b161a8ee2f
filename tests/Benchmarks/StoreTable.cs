using System.Collections.Concurrent;
using System.Globalization;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Storage.LiteDb;

namespace Benchmarks;

/// <summary>The journal and SQLite side by side, on journals of several lengths, in one process.</summary>
internal static class StoreTable
{
    private const int Saves = 300;
    private const int AtOnce = 256;

    // Once through everything, both sides alike, before any length is measured: the first one would pay for compiling the code of both.
    private const int WarmUp = 40_000;
    private const int WarmUpSaves = 1500;

    public static void Print(IReadOnlyList<int> lengths)
    {
        _ = Measure(WarmUp, WarmUpSaves);
        var columns = lengths.Select(length => Measure(length, Saves)).ToList();
        Console.WriteLine($"{"median / p95 in ms",-48}{string.Concat(lengths.Select(n => string.Create(CultureInfo.InvariantCulture, $"{n,20:N0}")))}");
        foreach (var row in columns[0].Select(c => c.What))
        {
            Console.WriteLine($"{row,-48}{string.Concat(columns.Select(c => $"{c.Single(cell => cell.What == row).Text,20}"))}");
        }
    }

    private static List<(string What, string Text)> Measure(int readings, int saves)
    {
        using var site = BenchSite.Empty();
        var history = new LongHistory(site.Files);
        var sqlitePath = Path.Combine(site.Folder, "yardstick.db");
        var cells = new List<(string What, string Text)>();
        var built = Table.Time(() => Build(site, history, sqlitePath, readings / LongHistory.PerRound));
        site.SetClock(history.Now.AddMinutes(10));
        var replayed = Table.Time(() => site.WithDesk(_ => { })); // whoever opens it first builds the states
        Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{readings:N0} readings: built in {built / 1000:0} s, states in {replayed / 1000:0.0} s"));
        cells.Add(("bytes per reading, SQLite", PerReading(new FileInfo(sqlitePath).Length, readings)));
        cells.Add(("bytes per reading, journal", PerReading(new FileInfo(Path.Combine(site.Folder, "journal", "records.db")).Length, readings)));
        cells.Add(("bytes per reading, what is kept beside it", PerReading(Beside(site.Folder), readings)));
        cells.Add(("peak memory of reading all that, SQLite, MB", StoreMemory.InNewProcess("sqlite", sqlitePath)));
        cells.Add(("peak memory of reading all that, journal, MB", StoreMemory.InNewProcess("journal", site.Folder)));
        using var sqlite = new SqliteYardstick(sqlitePath);
        Look(site, history, sqlite, cells);
        Save(site, history, sqlite, saves, cells);
        cells.Add(("opening it and showing 'now', journal", Times(20, _ => site.WithDesk(desk => NowView.Of(desk))).Text));
        return [.. cells.OrderBy(c => Array.IndexOf(Order, c.What))];
    }

    private static readonly string[] Order =
    [
        "durable save of 40 readings, SQLite", "durable save of 40 readings, journal", "  times SQLite's median", "opening it and showing 'now', journal",
        "one shift, SQLite", "one shift, journal", "last 50 of a point, SQLite", "last 50 of a point, journal", "monthly table of a point, SQLite", "monthly table of a point, journal",
    ];

    // Rounds are made, and given to SQLite, on one core while the journal takes them on the other.
    private static void Build(BenchSite site, LongHistory history, string sqlitePath, int rounds)
    {
        using var sqlite = new SqliteYardstick(sqlitePath);
        using var made = new BlockingCollection<ReadOnlyMemory<byte>>(AtOnce);
        var making = Task.Run(() =>
        {
            var record = JournalRecord.Seal(history.Beginning(), Head.Empty);
            made.Add(record.Bytes);
            for (var done = 0; done < rounds; done += AtOnce)
            {
                sqlite.BeginBulk();
                for (var i = done; i < Math.Min(rounds, done + AtOnce); i++)
                {
                    var draft = history.Round();
                    sqlite.Save(draft);
                    record = JournalRecord.Seal(draft, Head.Of(record));
                    made.Add(record.Bytes);
                }

                sqlite.EndBulk();
            }

            made.CompleteAdding();
        });
        JournalCopy.Make(made.GetConsumingEnumerable(), null, site.Folder, "bench:1", TimeSpan.Zero, LongWork.Unwatched);
        making.Wait();
    }

    // The two take turns, so that whatever else the machine does meets both.
    private static void Save(BenchSite site, LongHistory history, SqliteYardstick sqlite, int saves, List<(string What, string Text)> cells) => site.WithDesk(desk =>
    {
        var (ours, theirs) = (new double[saves], new double[saves]);
        for (var i = -150; i < saves; i++) // the first ones meet files whose pages are not in memory yet
        {
            var draft = history.Round();
            var theirTime = Table.Time(() => sqlite.Save(draft));
            var ourTime = Table.Time(() => desk.Store.Append(draft));
            if (i >= 0)
            {
                (ours[i], theirs[i]) = (ourTime, theirTime);
            }
        }

        var (journal, yardstick) = (Summary(ours), Summary(theirs));
        cells.Add(("durable save of 40 readings, SQLite", yardstick.Text));
        cells.Add(("durable save of 40 readings, journal", journal.Text));
        cells.Add(("  times SQLite's median", (journal.Median / yardstick.Median).ToString("0.00", CultureInfo.InvariantCulture)));
    });

    private static void Look(BenchSite site, LongHistory history, SqliteYardstick sqlite, List<(string What, string Text)> cells) => site.WithDesk(desk =>
    {
        var (from, to) = (history.Now.AddYears(-5), history.Now.AddHours(1));
        var tags = history.Points.Select(p => p.Tag).ToList();
        var store = desk.Store;
        void Pair(string what, int times, Func<int, int> theirs, Func<int, int> ours)
        {
            cells.Add((what + ", SQLite", Times(times, i => theirs(i)).Text));
            cells.Add((what + ", journal", Times(times, i => ours(i)).Text));
            if (theirs(0) != ours(0))
            {
                throw new InvalidOperationException($"{what}: SQLite has {theirs(0)} rows, the journal {ours(0)}");
            }
        }

        DateTimeOffset Begin(int i) => history.Now.AddHours(-12 * (1 + (i * 7)));
        Pair("one shift", 20, i => sqlite.Shift(Begin(i), Begin(i).AddHours(12)), i => StoreMemory.Shift(store, Begin(i), Begin(i).AddHours(12)));
        Pair("last 50 of a point", 20, i => sqlite.Last50(tags[i * 5 % tags.Count]), i => StoreMemory.Last50(store, tags[i * 5 % tags.Count], to));
        Pair("monthly table of a point", 3, i => sqlite.Months(tags[i * 5]), i => StoreMemory.Months(store, tags[i * 5], from, to));
    });

    private static (double Median, string Text) Times(int times, Action<int> action)
    {
        action(0);
        return Summary([.. Enumerable.Range(0, times).Select(i => Table.Time(() => action(i)))]);
    }

    private static (double Median, string Text) Summary(double[] taken)
    {
        Array.Sort(taken);
        var (median, late) = (taken[taken.Length / 2], taken[(int)(taken.Length * 0.95)]);
        return (median, string.Create(CultureInfo.InvariantCulture, $"{median:0.00} / {late:0.00}"));
    }

    private static string PerReading(long bytes, int readings) => readings == 0 ? "-" : ((double)bytes / readings).ToString("0.0", CultureInfo.InvariantCulture);

    private static long Beside(string folder) => new DirectoryInfo(Path.Combine(folder, "journal")).EnumerateFiles("*", SearchOption.AllDirectories)
        .Where(f => !f.Name.StartsWith("records.", StringComparison.Ordinal)).Sum(f => f.Length);
}
