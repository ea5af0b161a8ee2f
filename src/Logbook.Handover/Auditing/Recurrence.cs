using System.Globalization;
using Logbook.Journal;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Handover;

/// <summary>The same trouble again: how often a point left its limits, an instrument was faulty, or equipment stopped or was complained of, within fourteen days.</summary>
internal static class Recurrence
{
    private static readonly TimeSpan Window = TimeSpan.FromDays(14);
    private const int Often = 3;

    /// <param name="Of">A point's tag or an equipment's code.</param>
    /// <param name="What">In words: <c>limit</c>, <c>instrument faulty</c>, <c>stopped</c>, <c>action</c>.</param>
    public sealed record Trouble(string Of, string What, DateTimeOffset At, string Shift, long Seq);

    /// <summary>The third time and each further one within fourteen days.</summary>
    public static IEnumerable<AuditFlag> Flags(AuditSpan span) =>
        from kind in All(span.Desk.Site, span.WithHistory, span.Entries).GroupBy(t => (t.Of.ToUpperInvariant(), t.What))
        let times = kind.OrderBy(t => t.At).ToList()
        from i in Enumerable.Range(0, times.Count)
        let trouble = times[i]
        where trouble.At >= span.From && trouble.At < span.To && (i == times.Count - 1 || times[i + 1].At >= span.To)
        let count = times.Count(t => t.At <= trouble.At && t.At > trouble.At - Window)
        where count >= Often
        select new AuditFlag(
            "recurrent", trouble.Shift, trouble.At, null, span.Desk.Site.FindPoint(trouble.Of)?.Tag,
            $"{Name(span.Desk.Site, trouble.Of)}, {trouble.What}: {Nth(count)} time in {Window.TotalDays:F0} days, last {Say.Day(span.Desk.Site, trouble.At)} {Say.Ref(times.Where(t => t.At > trouble.At - Window && t.At <= trouble.At).Select(t => t.Seq))}",
            trouble.Seq);

    public static string Nth(int count) => count.ToString(CultureInfo.InvariantCulture) + (count % 10, count % 100) switch
    {
        (1, not 11) => "st",
        (2, not 12) => "nd",
        (3, not 13) => "rd",
        _ => "th",
    };

    /// <summary>Every trouble, each once from its begin on: a reading that stays beyond its limit is one.</summary>
    public static IEnumerable<Trouble> All(Site site, IEnumerable<JournalRecord> records, IEnumerable<(JournalRecord Record, Entry Entry)> entries)
    {
        var going = new HashSet<(string, string)>();
        foreach (var (record, entry) in entries)
        {
            foreach (var reading in entry.Readings)
            {
                var now = Troubles(entry, reading).ToList();
                foreach (var what in now.Where(w => going.Add((reading.Point, w))))
                {
                    yield return new Trouble(reading.Point, what, record.At, record.Shift, record.Seq);
                }

                going.RemoveWhere(g => g.Item1.Equals(reading.Point, StringComparison.OrdinalIgnoreCase) && !now.Contains(g.Item2, StringComparer.Ordinal));
            }
        }

        foreach (var record in records)
        {
            var (code, what) = record.Body switch
            {
                EquipmentStateChanged { State: "stopped" or "out" } change => (change.Equipment, change.State),
                Carry { ItemKind: "action" or "bypass" or "out-of-service" or "safety-equipment" or "temporary-change" } item => (item.On, item.ItemKind),
                _ => ("", ""),
            };
            if (code.Length > 0)
            {
                yield return new Trouble(code, what, record.At, record.Shift, record.Seq);
            }
        }
    }

    private static IEnumerable<string> Troubles(Entry entry, Reading reading) =>
        reading.NotTaken
            ? reading.Why is { } why && why.StartsWith("instrument faulty", StringComparison.OrdinalIgnoreCase) ? ["instrument faulty"] : []
            : entry.Findings.Where(f => f.Level >= Level.Watch && reading.Point.Equals(f.Point, StringComparison.OrdinalIgnoreCase))
                .Select(f => f.Code.Split('.')[0]).Distinct(StringComparer.Ordinal);

    private static string Name(Site site, string code) => site.FindPoint(code) is { } point ? Say.Visible($"{point.Tag} {point.Description}") : Say.Equipment(site, code);
}
