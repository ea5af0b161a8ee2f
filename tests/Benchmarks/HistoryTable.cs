using System.Globalization;
using Logbook.Handover;

namespace Benchmarks;

/// <summary>The note and the audit on years of hourly rounds.</summary>
internal static class HistoryTable
{
    public static void Print(int years)
    {
        using var site = BenchSite.With(0);
        site.WithDesk(desk =>
        {
            for (var hour = 0; hour < years * 365 * 24; hour++)
            {
                site.Round(desk, hour);
            }
        });
        Table.Header();
        var label = string.Create(CultureInfo.InvariantCulture, $"{years} years of hourly rounds");
        Table.Row($"opening the journal, {label}", 3, () => site.WithDesk(_ => { }));
        site.WithDesk(desk =>
        {
            var now = desk.Now;
            Table.Row($"draft note, {label}", 5, () => HandoverNote.Of(desk, now));
            Table.Row($"audit of a month, {label}", 3, () => Audit.Between(desk, now.AddDays(-30), now));
            Table.Row($"audit of all, {label}", 1, () => Audit.Between(desk, now.AddDays(-365 * years), now), warm: false);
        });
    }
}
