using System.Diagnostics;
using System.Globalization;
using Logbook.Journal;
using Logbook.Storage.LiteDb;

namespace Benchmarks;

/// <summary>What is asked of either store; and what a process of its own needs at most that asks all of it once.</summary>
internal static class StoreMemory
{
    public const string Word = "read-store";

    public static int Shift(IJournalStore store, DateTimeOffset from, DateTimeOffset to) =>
        store.Between(from.AddHours(-1), to.AddHours(1)).SelectMany(r => r.Body is Entry entry ? entry.Readings : []).Count(r => r.At >= from && r.At < to);

    public static int Last50(IJournalStore store, string tag, DateTimeOffset to) =>
        store.Series(tag, to.AddDays(-6), to).Where(v => v.Value is not null).TakeLast(50).Count();

    public static int Months(IJournalStore store, string tag, DateTimeOffset from, DateTimeOffset to) =>
        store.Series(tag, from, to).GroupBy(v => (v.At.UtcDateTime.Year, v.At.UtcDateTime.Month))
            .Select(month => (month.Key, Count: month.Count(v => v.Value is not null), Mean: month.Average(v => v.Value), Low: month.Min(v => v.Value), High: month.Max(v => v.Value))).Count();

    public static string InNewProcess(string which, string where)
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", [typeof(StoreMemory).Assembly.Location, Word, which, where]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        var peak = process.StandardOutput.ReadToEnd().Trim();
        process.WaitForExit();
        return peak;
    }

    public static void Read(string which, string where)
    {
        var (from, to, tag) = (new DateTimeOffset(2021, 11, 1, 0, 0, 0, TimeSpan.Zero), new DateTimeOffset(2026, 11, 1, 0, 0, 0, TimeSpan.Zero), "SL-T1");
        if (which is "sqlite")
        {
            using var sqlite = new SqliteYardstick(where);
            _ = sqlite.Shift(to.AddDays(-5), to) + sqlite.Last50(tag) + sqlite.Months(tag);
        }
        else
        {
            using var store = new LiteDbJournal(where, "bench:2", TimeProvider.System);
            _ = Shift(store, to.AddDays(-5), to) + Last50(store, tag, to) + Months(store, tag, from, to);
        }

        using var me = Process.GetCurrentProcess();
        Console.WriteLine((me.PeakWorkingSet64 / 1e6).ToString("0", CultureInfo.InvariantCulture));
    }
}
