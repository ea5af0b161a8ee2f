using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What corrections did to entries: both stay in the journal, the last one counts.</summary>
internal static class Corrected
{
    /// <summary>Entry and point to the last correction of that reading.</summary>
    public static Dictionary<(long Target, string Point), JournalRecord> LastOf(IEnumerable<JournalRecord> records)
    {
        var last = new Dictionary<(long, string), JournalRecord>();
        foreach (var record in records)
        {
            if (record.Body is Correction correction)
            {
                foreach (var reading in correction.Readings)
                {
                    last[(correction.Target, reading.Point)] = record;
                }
            }
        }

        return last;
    }

    /// <summary>The entries as they stand after their corrections: readings put right, results and findings of the last run.</summary>
    public static IEnumerable<(JournalRecord Record, Entry Entry)> Entries(IReadOnlyList<JournalRecord> records)
    {
        var runs = records.Select(r => r.Body).OfType<Correction>().GroupBy(c => c.Target).ToDictionary(g => g.Key, g => g.ToList());
        foreach (var record in records)
        {
            if (record.Body is Entry entry)
            {
                yield return (record, runs.TryGetValue(record.Seq, out var run)
                    ? entry with { Readings = run.Aggregate(entry.Readings, (readings, c) => c.PutInto(readings)), Results = run[^1].Results, Findings = run[^1].Findings }
                    : entry);
            }
        }
    }
}
