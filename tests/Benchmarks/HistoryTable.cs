using System.Globalization;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;

namespace Benchmarks;

/// <summary>The note and the audit on years of hourly rounds, beside what hand-written SQL takes on the same records in SQLite.</summary>
internal static class HistoryTable
{
    // What the SQL knows of: it has no signals, no limits, no carried items.
    private static readonly string[] Checks = ["missed", "late", "not-taken", "upset", "corrected"];

    /// <param name="folder">Where the history is kept for another run; null for a folder that goes.</param>
    public static void Print(int years, string? folder)
    {
        using var site = folder is null ? BenchSite.With(0) : BenchSite.In(folder);
        site.WithDesk(desk =>
        {
            for (var hour = (int)desk.State.Head.Seq; hour < years * 365 * 24; hour++)
            {
                site.Round(desk, hour);
            }
        });
        site.WithDesk(desk =>
        {
            using var sql = new LiteSql(desk);
            Measure(site, desk, sql, years);
        });
    }

    private static void Measure(BenchSite site, Desk desk, LiteSql sql, int years)
    {
        var now = desk.Now;
        var (month, all) = (now.AddDays(-30), now.AddDays(-365 * years));
        var entries = desk.Store.Read().Count(r => r.Body is Entry);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{years} years of hourly rounds: {entries:N0} rounds, {sql.Readings:N0} values"));
        Table.Header();
        Table.Row("opening the journal", 3, () => site.WithDesk(_ => { }));
        var note = Table.Row("draft note", 5, () => HandoverNote.Of(desk, now));
        var noteSql = Table.Row("draft note, hand-written SQL", 5, () => sql.Note(now));
        var checks = Table.Row("audit of a month, checks and corrections", 3, () => Audit.Between(desk, month, now, Checks));
        var checksSql = Table.Row("audit of a month, checks and corrections, SQL", 3, () => sql.Audit(month, now));
        Table.Row("audit of a month, every flag", 3, () => Audit.Between(desk, month, now));
        var years1 = Table.Row("audit of all years, checks and corrections", 1, () => Audit.Between(desk, all, now, Checks), warm: false);
        var yearsSql = Table.Row("audit of all years, checks and corrections, SQL", 1, () => sql.Audit(all, now), warm: false);
        Table.Row("audit of all years, every flag", 1, () => Audit.Between(desk, all, now), warm: false);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"times the SQL (medians): note {note / noteSql:0.00}, month {checks / checksSql:0.00}, all years {years1 / yearsSql:0.00}"));
    }
}
