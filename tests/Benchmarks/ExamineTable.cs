using System.Globalization;
using Logbook.Checks;
using Logbook.Checks.Examining;
using Logbook.Demo;
using Logbook.Journal;
using Logbook.Storage.LiteDb;

namespace Benchmarks;

/// <summary>
/// What one cross-examination takes, and the replay of a year. A fortnight is typed as the demo's people do, and learned from;
/// its entries are told again, moved in time, until the year is full.
/// </summary>
internal static class ExamineTable
{
    private const int Typed = 14;

    // The demo's last days have its bad night in them, and leave equipment out: they are not told again.
    private const int Told = 11;
    private const int Year = 365;
    private static readonly DateTimeOffset End = new(2026, 11, 20, 12, 0, 0, TimeSpan.Zero);

    public static void Print()
    {
        Table.Header();
        var real = Type();
        using var line = BenchSite.Empty();
        Fill(line, real, Told);
        line.SetClock(real[^1].Entered.AddMinutes(10));
        line.WithDesk(desk =>
        {
            var shift = new WholeShift(desk);
            Table.Row($"42 readings examined, {shift.Compared} comparisons", 200, () => shift.Examine());
            Table.Row("42 readings judged and examined", 50, () =>
            {
                shift.Judge();
                shift.Examine();
            });
        });
        using var year = BenchSite.Empty();
        Fill(year, real, Year);
        year.SetClock(real[0].Entered.AddDays(Year));
        year.WithDesk(desk =>
        {
            var (from, to) = (real[0].At.AddDays(Typed), desk.Now);
            ReplayReport? report = null;
            Table.Row("replay of a year", 1, () => report = Replaying.Of(desk, from, to), warm: false);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{report!.Examined:N0} of {desk.State.Head.Seq:N0} records examined, the gate open at {report.Flagged:N0}, {report.Shifts.Count} shifts, at most {report.Shifts.Max(s => s.Demands)} demands in one"));
        });
    }

    /// <summary>The records up to the last day that is told again.</summary>
    private static List<JournalRecord> Type()
    {
        using var line = BenchSite.Empty();
        using var opened = new Opened();
        DemoMill.Make(clock => opened.Desk = line.Open(clock), End, Typed, seed: 1);
        return [.. opened.Desk!.Store.Read().TakeWhile(r => r.Entered < End.AddDays(Told - Typed))];
    }

    private static void Fill(BenchSite bench, List<JournalRecord> real, int days)
    {
        IEnumerable<ReadOnlyMemory<byte>> Bytes(Logbook.Plant.Site site)
        {
            var head = Head.Empty;
            foreach (var draft in ManyYears.Drafts(site, real, Told, days))
            {
                var record = JournalRecord.Seal(draft, head);
                head = Head.Of(record);
                yield return record.Bytes;
            }
        }

        var site = Logbook.Plant.SiteReader.Read(bench.Files).Value!;
        JournalCopy.Make(Bytes(site), null, bench.Folder, "bench:1", TimeSpan.Zero, LongWork.Unwatched);
    }

    private sealed class Opened : IDisposable
    {
        public Desk? Desk { get; set; }

        public void Dispose() => Desk?.Store.Dispose();
    }
}
